//! The drawing set on every paper that the file may name.

use islandwright::catalog::PaperKind;
use islandwright::drawing::{Sheet, check, sheets};
use islandwright::{design, parts, pipeline, plan};
use std::path::Path;

/// Papers on which every text of every example finds room, and small ones, on which texts keep clear of each other.
const PAPERS: [(PaperKind, bool); 9] = [
    (PaperKind::A3, true),
    (PaperKind::Tabloid, true),
    (PaperKind::ArchB, true),
    (PaperKind::AnsiC, true),
    (PaperKind::A2, true),
    (PaperKind::ArchD, true),
    (PaperKind::A4, false),
    (PaperKind::Letter, false),
    (PaperKind::ArchA, false),
];

fn example(name: &str) -> String {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("params");
    std::fs::read_to_string(folder.join(name)).expect("an example")
}

fn drawn(text: &str, paper: PaperKind) -> Vec<Sheet> {
    let mut design = design::from_text(text).expect("a sound example");
    design.drawings.paper.value = paper.landscape();
    let plan = plan::lay_out(design).expect("an example that can be built");
    let assembly = parts::build(&plan);
    sheets(&plan, &assembly, &pipeline::told(&plan, &assembly))
}

fn faults(text: &str) -> Vec<String> {
    let mut faults = Vec::new();
    for (paper, holds_all) in PAPERS {
        for sheet in drawn(text, paper) {
            if let Err(fault) = check::texts_are_clear(&sheet) {
                faults.push(format!("{paper:?}: {fault}"));
            }
            if holds_all && !sheet.lost.is_empty() {
                faults.push(format!("{paper:?}: {} lost {:?}", sheet.name, sheet.lost));
            }
        }
    }
    faults
}

#[track_caller]
fn holds(name: &str) {
    let faults = faults(&example(name));
    assert!(faults.is_empty(), "{name}:\n{}", faults.join("\n"));
}

#[test]
fn the_garden_corner_is_readable_on_every_paper() {
    holds("garden-corner.yaml");
}

#[test]
fn the_poolside_u_is_readable_on_every_paper() {
    holds("poolside-u.yaml");
}

#[test]
fn the_straight_terrace_is_readable_on_every_paper() {
    holds("terrace-straight.yaml");
}

#[test]
fn the_smallest_is_readable_on_every_paper() {
    holds("smallest.yaml");
}

/// The garden corner with the readings that its file has in a comment, one of them written otherwise.
fn measured(reading: &str, otherwise: &str) -> String {
    let text = example("garden-corner.yaml");
    let (before, rest) = text.split_once("# as_built:\n").expect("a commented group");
    let (own, after) = rest.split_once("\n\n").expect("an end of it");
    let own = own.replace("#  ", "  ").replace(reading, otherwise);
    format!("{before}as_built:\n{own}\n\n{after}")
}

#[test]
fn a_frame_as_measured_is_readable_on_every_paper() {
    for (reading, otherwise) in [("", ""), ("seating: 10 ft 1/8 in", "seating: 11 ft 1/8 in")] {
        let text = measured(reading, otherwise);
        let plan =
            plan::lay_out(design::from_text(&text).expect("sound")).expect("it can be built");
        assert!(plan.as_built.is_some_and(|f| f.planned().is_some()));
        let faults = faults(&text);
        assert!(faults.is_empty(), "{otherwise}:\n{}", faults.join("\n"));
    }
}
