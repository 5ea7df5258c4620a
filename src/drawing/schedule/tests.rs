//! What the schedules list is what is built.

use super::*;
use crate::catalog::PaperKind;
use crate::drawing::page::Page;
use crate::drawing::{Scale, check};
use crate::geometry::{Bounds2, Point2};
use crate::parts::{Assembly, Group};
use crate::plan::Plan;
use crate::table::{Cell, Table};

/// Every file that is shipped.
fn examples() -> Vec<(String, Plan, Assembly)> {
    let mut paths: Vec<_> = ["params", "templates"]
        .iter()
        .flat_map(|folder| {
            std::fs::read_dir(format!("{}/{folder}", env!("CARGO_MANIFEST_DIR"))).unwrap()
        })
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|e| e == "yaml"))
        .collect();
    paths.sort();
    let load = |path: std::path::PathBuf| {
        let text = std::fs::read_to_string(&path).unwrap();
        let plan = crate::plan::lay_out(crate::design::from_text(&text).ok()?).ok()?;
        let assembly = crate::parts::build(&plan);
        Some((path.display().to_string(), plan, assembly))
    };
    let found: Vec<_> = paths.into_iter().filter_map(load).collect();
    assert!(found.len() >= 10);
    found
}

fn column(table: &Table, heading: &str) -> usize {
    table
        .columns
        .iter()
        .position(|c| c.heading == heading)
        .unwrap()
}

fn sum(table: &Table, heading: &str) -> f64 {
    let i = column(table, heading);
    table.rows.iter().filter_map(|r| r[i].rounded()).sum()
}

#[test]
fn every_part_is_counted_once() {
    for (path, plan, assembly) in examples() {
        let count = |group: fn(Group) -> bool| {
            assembly.parts.iter().filter(|p| group(p.group)).count() as f64
        };
        let studs = stud_schedule(&plan, &assembly);
        assert_eq!(
            sum(&studs, "count"),
            count(|g| g == Group::Framing),
            "{path}"
        );
        let materials = material_schedule(&plan, &assembly);
        assert_eq!(
            sum(&materials, "pieces"),
            count(|g| g != Group::Appliances),
            "{path}"
        );
    }
}

#[test]
fn every_mark_of_the_frame_stands_in_its_row() {
    for (path, plan, assembly) in examples() {
        let table = stud_schedule(&plan, &assembly);
        let marks = column(&table, "marks");
        let told: Vec<String> = table.rows.iter().map(|r| r[marks].spelt()).collect();
        for part in assembly.parts.iter().filter(|p| p.group == Group::Framing) {
            let named = told
                .iter()
                .any(|cell| cell.split(", ").any(|range| is_in(&part.mark, range)));
            assert!(named, "{path}: {}", part.mark);
        }
    }
}

/// True when a mark is one, or lies in a range such as `C-S03 to C-S07`.
fn is_in(mark: &str, range: &str) -> bool {
    let number = |m: &str| {
        m.rsplit(|c: char| !c.is_ascii_digit())
            .next()
            .and_then(|d| d.parse::<u32>().ok())
    };
    let stem = |m: &str| m.trim_end_matches(|c: char| c.is_ascii_digit()).to_owned();
    match range.split_once(" to ") {
        None => range == mark,
        Some((first, last)) => {
            stem(first) == stem(mark) && (number(first)..=number(last)).contains(&number(mark))
        }
    }
}

#[test]
fn every_appliance_and_opening_is_a_row() {
    for (path, plan, _) in examples() {
        let names =
            |table: Table| -> Vec<String> { table.rows.iter().map(|r| r[0].spelt()).collect() };
        let appliances: Vec<_> = plan
            .design
            .appliances
            .iter()
            .map(|a| a.name.clone())
            .collect();
        assert_eq!(names(appliance_schedule(&plan)), appliances, "{path}");
        assert_eq!(names(rating_schedule(&plan)), appliances, "{path}");
        let openings: Vec<_> = plan
            .design
            .openings
            .iter()
            .map(|o| o.name.clone())
            .collect();
        assert_eq!(names(opening_schedule(&plan)), openings, "{path}");
    }
}

#[test]
fn what_the_file_does_not_say_is_a_dash() {
    let text = "project: {title: t}\nruns: [{name: a, length: 8 ft, depth: 30 in}]\nappliances:\n  - {name: sink, kind: sink, run: a, at: {from: left, distance: 4 ft}, cutout: {width: 15 in, depth: 15 in}, body: {width: 14 in, depth: 14 in, height: 7 in}, front: {closed: {setback: 7 in}}}\n";
    let plan = crate::plan::lay_out(crate::design::from_text(text).unwrap()).unwrap();
    let row = &rating_schedule(&plan).rows[0];
    assert!(row[1..].iter().all(|c| *c == Cell::Empty), "{row:?}");
    let row: Vec<_> = appliance_schedule(&plan).rows[0]
        .iter()
        .map(Cell::spelt)
        .collect();
    assert_eq!(row[3..5], ["4'-0\"", "1'-3\" × 1'-3\""]);
}

#[test]
fn areas_and_volumes_are_those_on_paper() {
    // A plain slab of 2000 × 800 mm, 50 thick, on a frame without cladding overhangs.
    let text = include_str!("../../../params/smallest.yaml");
    let plan = crate::plan::lay_out(crate::design::from_text(text).unwrap()).unwrap();
    let assembly = crate::parts::build(&plan);
    let table = material_schedule(&plan, &assembly);
    let slab = table.rows.iter().find(|r| r[0].spelt() == "slab").unwrap();
    // Frame 72 × 30 in, cladding 7/8 in all round, overhang 1 in: see the design's usual values.
    let overhang = &plan.design.counter.overhang;
    let out = plan.design.trade.cladding().mm();
    let width = 72.0 * 25.4 + 2.0 * out + overhang.left.mm() + overhang.right.mm();
    let depth = 30.0 * 25.4 + 2.0 * out + overhang.working.mm() + overhang.seating.mm();
    let area = slab[5].rounded().unwrap();
    // Its corners may be eased, which takes off little.
    let plain = width * depth / 92_903.04;
    assert!(area <= plain + 0.05 && area > plain - 0.1, "{area} {plain}");
}

#[test]
fn tables_flow_over_sheets_without_overlap_or_loss() {
    for (path, plan, assembly) in examples() {
        let area = Bounds2 {
            low: Point2::new(25.0, 45.0),
            high: Point2::new(282.0, 185.0),
        };
        let tables = [
            appliance_schedule(&plan),
            rating_schedule(&plan),
            opening_schedule(&plan),
            material_schedule(&plan, &assembly),
            stud_schedule(&plan, &assembly),
            edge_schedule(&plan),
        ];
        let grids: Vec<Grid> = tables
            .iter()
            .map(|t| Grid::new(t, area.width()).with_notes(edge_notes(&plan)))
            .collect();
        let mut next = vec![0; grids.len()];
        for portions in flow(&grids, &area) {
            let inside = Bounds2 {
                low: Point2::new(10.0, 10.0),
                high: Point2::new(287.0, 200.0),
            };
            let mut page = Page::new(PaperKind::A4.landscape(), inside);
            for p in &portions {
                assert_eq!(p.part.from, next[p.grid], "{path}");
                next[p.grid] = p.part.to;
                let low = p.at.y - grids[p.grid].height_of(p.part);
                assert!(
                    low >= area.low.y - 1e-6 && p.at.y <= area.high.y + 1e-6,
                    "{path}"
                );
                grids[p.grid].draw(&mut page, p.at, p.part);
            }
            let sheet = page.finish("s".into(), "s".into(), "1".into(), Scale::full());
            check::texts_are_clear(&sheet).unwrap();
        }
        let rows: Vec<usize> = grids.iter().map(Grid::rows).collect();
        assert_eq!(next, rows, "{path}");
    }
}
