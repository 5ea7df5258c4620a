//! The whole set of every example.

use super::contents::Contents;
use super::{Told, sheets};
use crate::drawing::Sheet;
use crate::drawing::border::Frame;
use crate::drawing::elevation::{FINISHED, FRAMING};
use crate::drawing::{Item, check};
use crate::parts::Assembly;
use crate::plan::Plan;
use std::collections::BTreeSet;
use std::sync::LazyLock;

struct Example {
    path: String,
    plan: Plan,
    assembly: Assembly,
    sheets: Vec<Sheet>,
}

/// Every example that is shipped, drawn once.
static EXAMPLES: LazyLock<Vec<Example>> = LazyLock::new(examples);

fn examples() -> Vec<Example> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/params");
    let mut paths: Vec<_> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|e| e == "yaml"))
        .collect();
    paths.sort();
    assert!(paths.len() >= 4);
    let load = |path: std::path::PathBuf| {
        let text = std::fs::read_to_string(&path).unwrap();
        let plan = crate::plan::lay_out(crate::design::from_text(&text).unwrap()).unwrap();
        let assembly = crate::parts::build(&plan);
        let sheets = sheets(&plan, &assembly, &Told::default());
        Example {
            path: path.display().to_string(),
            plan,
            assembly,
            sheets,
        }
    };
    paths.into_iter().map(load).collect()
}

fn texts(sheet: &Sheet) -> Vec<&str> {
    let texts = sheet.items.iter().filter_map(|item| match item {
        Item::Text { text, .. } => Some(text.as_str()),
        Item::Path { .. } | Item::Dimension(_) => None,
    });
    texts.collect()
}

#[test]
fn on_every_sheet_of_every_example_texts_keep_clear() {
    for Example { path, sheets, .. } in EXAMPLES.iter() {
        for sheet in sheets {
            if let Err(fault) = check::texts_are_clear(sheet) {
                panic!("{path}: {fault}");
            }
        }
    }
}

#[test]
fn every_member_of_the_frame_is_marked_on_a_sheet_of_the_framing() {
    for Example {
        path,
        assembly,
        sheets,
        ..
    } in EXAMPLES.iter()
    {
        // A mark in a schedule alone would not tell where the member stands.
        let of_framing = sheets.iter().filter(|s| s.name.contains("framing"));
        let lettered: BTreeSet<&str> = of_framing.flat_map(texts).collect();
        let framing = assembly.parts.iter();
        let framing = framing.filter(|p| p.group == crate::parts::Group::Framing);
        let missing: Vec<_> = framing
            .map(|p| p.mark.as_str())
            .filter(|mark| !lettered.contains(mark))
            .collect();
        assert!(missing.is_empty(), "{path}: no sheet shows {missing:?}");
    }
}

#[test]
fn the_overall_dimension_of_a_framing_is_the_design_at_scale() {
    for Example {
        path, plan, sheets, ..
    } in EXAMPLES.iter()
    {
        // The first run's working face: its panel is as long as the run's frame.
        let name = format!("elevation-{}-framing", plan.faces[0].mark);
        let sheet = sheets.iter().find(|s| s.name == name).unwrap();
        let lines = sheet.items.iter().filter(
            |item| matches!(item, Item::Dimension(d) if (d.line[0].y - d.line[1].y).abs() < 1e-9),
        );
        let longest = lines.map(check::extent).fold(0.0, f64::max);
        let (low, high) = plan.runs[0].framed;
        let built = longest / sheet.scale.factor;
        assert!(
            (built - (high - low)).abs() < 0.1,
            "{path}: {built} for {}",
            high - low
        );
    }
}

#[test]
fn sheets_are_numbered_through_and_named_once() {
    for Example { sheets, .. } in EXAMPLES.iter() {
        let names: BTreeSet<_> = sheets.iter().map(|s| &s.name).collect();
        assert_eq!(names.len(), sheets.len());
        for (i, sheet) in sheets.iter().enumerate() {
            let number = format!("{} of {}", i + 1, sheets.len());
            assert!(
                texts(sheet).contains(&number.as_str()),
                "{}: {number}",
                sheet.name
            );
        }
    }
}

#[test]
fn the_same_plan_gives_the_same_sheets() {
    for example in EXAMPLES.iter() {
        assert_eq!(
            sheets(&example.plan, &example.assembly, &Told::default()),
            example.sheets
        );
    }
}

/// Stairs of runs 12 ft long, turning left and right in turns.
fn stairs(runs: usize) -> Plan {
    let run = |number: usize| {
        let turn = match number {
            0 => "",
            n if n % 2 == 1 => ", turn: left",
            _ => ", turn: right",
        };
        format!("  - {{name: run {number}, length: 12 ft, depth: 30 in{turn}}}\n")
    };
    let runs: String = (0..runs).map(run).collect();
    let text = format!("project: {{title: Stairs}}\nruns:\n{runs}");
    crate::plan::lay_out(crate::design::from_text(&text).unwrap()).unwrap()
}

#[test]
fn sheets_grow_with_the_runs_and_no_faster() {
    for runs in [4, 8, 16, 32] {
        let plan = stairs(runs);
        let frame = Frame::new(&plan.design);
        let entries = Contents::new(&plan, &crate::parts::build(&plan), &frame).entries;
        let of = |chapter| entries.iter().filter(|e| e.chapter == chapter).count();
        // Two faces a run and one at each end. A sheet is 296 wide, 7104 at 1/2" to the foot: a face of 12 ft is 3658, with
        // the depth of a neighbour, 762, at both ends 5182, and fits with what is seen past it; so does its steel.
        let faces = 2 * runs + 2;
        assert_eq!((of(FINISHED), of(FRAMING)), (faces, faces), "{runs} runs");
        // The others: a list of at most six rows a run in the index, a row or two a run in the schedules.
        let others = entries.len() - of(FINISHED) - of(FRAMING);
        assert!(others <= 14 + runs / 2, "{runs} runs: {others} others");
    }
}
