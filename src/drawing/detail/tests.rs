//! The details of every example and every starter file.

use super::drawing::cut;
use super::list::Subject;
use super::sheets::{draw_all, layout};
use crate::drawing::border::Frame;
use crate::drawing::scene::Scene;
use crate::drawing::section::CutView;
use crate::drawing::{Item, Scale, Sheet, check};
use crate::geometry::Bounds2;
use crate::parts::{Assembly, PartKind};
use crate::plan::Plan;

fn designs() -> Vec<(String, Plan, Assembly)> {
    let folders = ["params", "templates"].map(|f| format!("{}/{f}", env!("CARGO_MANIFEST_DIR")));
    let mut paths: Vec<_> = folders
        .iter()
        .flat_map(|f| std::fs::read_dir(f).unwrap())
        .map(|entry| entry.unwrap().path())
        .filter(|p| p.extension().is_some_and(|e| e == "yaml") && !p.ends_with("title-block.yaml"))
        .collect();
    paths.sort();
    assert!(paths.len() >= 10);
    let loaded = paths.into_iter().map(|path| {
        let text = std::fs::read_to_string(&path).unwrap();
        let plan = crate::plan::lay_out(crate::design::from_text(&text).unwrap()).unwrap();
        let assembly = crate::parts::build(&plan);
        (path.display().to_string(), plan, assembly)
    });
    loaded.collect()
}

/// All sheets of details, and how many of their texts and leaders found no place.
fn drawn(plan: &Plan, assembly: &Assembly) -> (Vec<Sheet>, usize) {
    let frame = Frame::new(&plan.design);
    let layout = layout(plan, &frame);
    let scene = Scene::new(assembly);
    let mut missing = 0;
    let sheets = (0..layout.arranged.sheets).map(|number| {
        let mut page = frame.page("details", &layout.scale(number), &[]);
        missing += draw_all(&mut page, plan, &scene, (&layout, number));
        let scale = layout.scale(number);
        page.finish("s".into(), "s".into(), "1".into(), scale)
    });
    (sheets.collect(), missing)
}

#[test]
fn every_detail_of_every_design_is_drawn_and_nothing_on_it_overlaps() {
    for (path, plan, assembly) in designs() {
        let (sheets, missing) = drawn(&plan, &assembly);
        assert_eq!(missing, 0, "{path}: texts without a place");
        for sheet in &sheets {
            check::texts_are_clear(sheet).unwrap_or_else(|fault| panic!("{path}: {fault}"));
        }
        let texts: Vec<&str> = sheets
            .iter()
            .flat_map(|s| &s.items)
            .filter_map(|item| match item {
                Item::Text { text, height, .. } => {
                    assert!(*height >= 2.5);
                    Some(text.as_str())
                }
                _ => None,
            })
            .collect();
        let details = super::details(&plan);
        assert!(details.len() >= 4, "{path}");
        for (detail, number) in details.iter().zip(1..) {
            assert_eq!(detail.number, number);
            assert!(
                texts.contains(&detail.title.as_str()),
                "{path}: no {}",
                detail.title
            );
        }
    }
}

#[test]
fn details_are_drawn_between_half_and_a_quarter_of_their_size_and_measure_so() {
    for (path, plan, assembly) in designs() {
        for sheet in drawn(&plan, &assembly).0 {
            let Scale { factor, name } = &sheet.scale;
            assert!((0.25..=0.5).contains(factor), "{path}: {name}");
            let dimensions = sheet.items.iter().filter_map(|item| match item {
                Item::Dimension(d) => Some(d),
                _ => None,
            });
            for d in dimensions {
                let long = (d.line[1] - d.line[0]).norm();
                assert!((long - d.measured * factor).abs() < 1e-6, "{path}: {d:?}");
            }
        }
    }
}

/// The cut of the first detail of the garden's corner that is asked for.
fn garden(is_meant: fn(&Subject) -> bool) -> (CutView, Assembly) {
    let found = designs()
        .into_iter()
        .find(|d| d.0.ends_with("garden-corner.yaml"));
    let (_, plan, assembly) = found.unwrap();
    let layout = layout(&plan, &Frame::new(&plan.design));
    let scene = Scene::new(&assembly);
    let mut figures = layout.figures.iter();
    let pictured = figures.find(|p| is_meant(&p.detail.subject)).unwrap();
    (cut(&scene, &pictured.content), assembly)
}

/// The box round what is cut of the parts of a kind, inches.
fn box_of((cut, assembly): &(CutView, Assembly), kind: PartKind) -> [f64; 4] {
    let own = cut
        .pieces
        .iter()
        .filter(|p| p.part.is_some_and(|n| assembly.parts[n].kind == kind));
    let boxes = own.flat_map(|p| &p.regions).map(|r| r.outer.bounds());
    let Bounds2 { low, high } = boxes.reduce(Bounds2::union).unwrap();
    [low.x, low.y, high.x, high.y].map(|v| v / 25.4)
}

fn near(found: f64, inches: f64) {
    assert!((found - inches).abs() < 1e-3, "{found} for {inches}");
}

#[test]
fn the_edge_of_the_counter_is_cut_as_the_file_has_it() {
    // Overhang 2 in past a cladding of 1/2 + 1/4 + 1/8 in; the top at 36 in, slab 2 in, turndown 1 in below it; board
    // from the frame 1/2 in out; the substrate 1/2 in under the slab, begins 1 1/2 in inside the edge.
    let edge = garden(|s| matches!(s, Subject::Edge(..)));
    let [left, low, _, high] = box_of(&edge, PartKind::Slab);
    near(left, -2.875);
    near(low, 33.0);
    near(high, 36.0);
    let [left, low, _, high] = box_of(&edge, PartKind::Substrate);
    near(left, -1.375);
    near(low, 33.5);
    near(high, 34.0);
    let [left, _, right, high] = box_of(&edge, PartKind::Board);
    near(left, -0.5);
    near(right, 0.0);
    near(high, 33.5);
    // The tile stands 3/8 in out of the base coat.
    near(box_of(&edge, PartKind::Tile)[0], -1.125);
}

#[test]
fn the_base_is_cut_as_the_file_has_it() {
    // Frame 2 in over the ground on a sleeper 3 1/2 × 1 1/2 in: 1/2 in is left for shims.
    let base = garden(|s| matches!(s, Subject::Base(_)));
    let [left, low, right, high] = box_of(&base, PartKind::Sleeper);
    near(left, 0.0);
    near(right, 3.5);
    near(low, 0.5);
    near(high, 2.0);
    let [left, low, right, high] = box_of(&base, PartKind::BottomTrack);
    near(left, 0.0);
    near(low, 2.0);
    near(high, 3.25);
    // A track is wider than its stud by two sheets and a bend: 3.625 + 2 × 0.0346 + 0.0765 (design guide).
    assert!((right - 3.7707).abs() < 1e-3, "{right}");
    near(box_of(&base, PartKind::BaseCoat)[1], 2.0);
}

#[test]
fn where_two_runs_meet_the_studs_are_doubled_in_the_one_that_goes_through() {
    // The cook run goes through: two webs of 0.0346 in back to back on the line of the bar run's working face, 0 in y.
    let meeting = garden(|s| matches!(s, Subject::Inward(_)));
    let (cut, assembly) = &meeting;
    let studs = cut.pieces.iter().filter(|p| {
        let part = &assembly.parts[p.part.unwrap()];
        part.kind == PartKind::Stud && part.mark.starts_with("C-")
    });
    let boxes: Vec<Bounds2> = studs
        .flat_map(|p| &p.regions)
        .map(|r| r.outer.bounds())
        .collect();
    let above = boxes.iter().filter(|b| b.low.y.abs() < 1e-3).count();
    let below = boxes.iter().filter(|b| b.high.y.abs() < 1e-3).count();
    assert_eq!((above, below), (1, 1), "{boxes:?}");
}
