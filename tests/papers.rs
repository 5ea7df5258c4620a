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

fn drawn(example: &str, paper: PaperKind) -> Vec<Sheet> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("params");
    let text = std::fs::read_to_string(folder.join(example)).expect("an example");
    let mut design = design::from_text(&text).expect("a sound example");
    design.drawings.paper.value = paper.landscape();
    let plan = plan::lay_out(design).expect("an example that can be built");
    let assembly = parts::build(&plan);
    sheets(&plan, &assembly, &pipeline::told(&plan, &assembly))
}

fn faults(example: &str) -> Vec<String> {
    let mut faults = Vec::new();
    for (paper, holds_all) in PAPERS {
        for sheet in drawn(example, paper) {
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
fn holds(example: &str) {
    let faults = faults(example);
    assert!(faults.is_empty(), "{example}:\n{}", faults.join("\n"));
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
