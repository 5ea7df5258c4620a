//! Designs drawn at random: the plan refuses with a finding that points into the file, or every invariant holds.
//!
//! `ISLANDWRIGHT_CASES=2000 cargo test --release --test random_designs` looks longer than CI does.

mod amounts;
mod answers;
mod counter;
mod cuts;
mod draw;
mod overlap;
mod sheets;
mod shown;
mod site;
mod steel;

use islandwright::design;
use islandwright::diagnostics::Finding;
use islandwright::geometry::{Faceted, Solid};
use islandwright::parts::{Assembly, PartKind};
use islandwright::plan::{self, Plan};
use proptest::prelude::*;
use proptest::test_runner::{Config, RngAlgorithm, TestCaseError, TestRng, TestRunner};
use std::cell::{Cell, RefCell};
use std::collections::{BTreeMap, BTreeSet};

/// A test takes this many designs, or as many as the environment says.
const CASES: u32 = 200;

fn cases() -> u32 {
    let asked = std::env::var("ISLANDWRIGHT_CASES").ok();
    asked.and_then(|text| text.parse().ok()).unwrap_or(CASES)
}

/// The plan of a file, or why there is none.
fn plan_of(text: &str) -> Result<Plan, Vec<Finding>> {
    design::from_text(text).and_then(plan::lay_out)
}

/// A refusal says what, where and what to do.
fn check_refusal(text: &str, findings: &[Finding]) -> Result<(), TestCaseError> {
    prop_assert!(!findings.is_empty(), "refused without a finding");
    let lines = text.lines().count();
    for finding in findings {
        let place = &finding.place;
        prop_assert!(
            place.is_known() && place.line <= lines,
            "a finding points nowhere: {finding:?}"
        );
        prop_assert!(
            !finding.found.is_empty() && !finding.hint.is_empty(),
            "a finding says little: {finding:?}"
        );
    }
    Ok(())
}

fn check_none(what: &str, faults: &[String], text: &str) -> Result<(), TestCaseError> {
    let shown: Vec<_> = faults.iter().take(12).map(String::as_str).collect();
    prop_assert!(
        faults.is_empty(),
        "{what}: {}\n{}\n{text}",
        faults.len(),
        shown.join("\n")
    );
    Ok(())
}

/// Every solid is closed, faces outwards and has its exact volume.
fn check_surfaces(assembly: &Assembly, surfaces: &[Faceted]) -> Vec<String> {
    let fault = |(solid, surface): (&Solid, &Faceted)| {
        let fault = surface.check_against(solid, overlap::CHORDS).err()?;
        let user = assembly.parts.iter().find(|p| assembly.solid(p) == solid);
        Some(format!("{}: {fault}", user.map_or("no part", |p| &p.mark)))
    };
    assembly
        .solids
        .iter()
        .zip(surfaces)
        .filter_map(fault)
        .collect()
}

fn check_marks(assembly: &Assembly) -> Vec<String> {
    let mut seen = BTreeSet::new();
    let twice = assembly.parts.iter().filter(|p| !seen.insert(&p.mark));
    twice.map(|p| p.mark.clone()).collect()
}

fn check_slab(assembly: &Assembly) -> Vec<String> {
    let mut faults = Vec::new();
    for part in assembly.parts.iter().filter(|p| p.kind == PartKind::Slab) {
        if let Solid::Slab(slab) = assembly.solid(part) {
            let (exact, slices) = (slab.volume(), counter::volume(slab));
            if (exact / slices - 1.0).abs() > 1e-4 {
                faults.push(format!(
                    "{}: {exact} mm³ for {slices} mm³ of slices",
                    part.mark
                ));
            }
        }
    }
    faults
}

fn check_built(plan: &Plan, text: &str) -> Result<(), TestCaseError> {
    let assembly = islandwright::parts::build(plan);
    let surfaces: Vec<Faceted> = assembly
        .solids
        .iter()
        .map(|s| s.faceted(overlap::CHORDS))
        .collect();
    check_none("faults of answers", &answers::faults(plan), text)?;
    check_none("marks used twice", &check_marks(&assembly), text)?;
    check_none(
        "unsound solids",
        &check_surfaces(&assembly, &surfaces),
        text,
    )?;
    check_none("slab volumes", &check_slab(&assembly), text)?;
    check_none(
        "faults of the steel",
        &steel::faults(plan, &assembly, &surfaces),
        text,
    )?;
    check_none(
        "solids that share space",
        &overlap::overlaps(&assembly, &surfaces),
        text,
    )?;
    check_none(
        "faults of what is shown",
        &shown::faults(plan, &assembly),
        text,
    )?;
    check_none("faults of sheets", &sheet_faults(plan, &assembly), text)?;
    check_none(
        "faults of sheet lists",
        &sheets::faults(plan, &assembly, &surfaces),
        text,
    )?;
    let takeoff = islandwright::takeoff::reckon(plan, &assembly);
    check_none(
        "faults of the quantities",
        &amounts::faults(plan, &assembly, &takeoff.quantities),
        text,
    )?;
    check_none(
        "faults of the cut list",
        &cuts::faults(plan, &assembly, &takeoff),
        text,
    )
}

/// On every sheet of the drawing set no text meets another one, a line, or the paper's edge.
fn sheet_faults(plan: &Plan, assembly: &Assembly) -> Vec<String> {
    let sheets = islandwright::drawing::sheets(
        plan,
        assembly,
        &islandwright::pipeline::told(plan, assembly),
    );
    let faults = sheets
        .iter()
        .map(islandwright::drawing::check::texts_are_clear);
    faults.filter_map(Result::err).collect()
}

#[test]
fn a_random_design_is_refused_in_words_or_built_without_fault() {
    let config = Config {
        cases: cases(),
        failure_persistence: None,
        max_shrink_iters: 200,
        ..Config::default()
    };
    // The same designs each time: a longer look draws more of them.
    let rng = TestRng::deterministic_rng(RngAlgorithm::ChaCha);
    let mut runner = TestRunner::new_with_rng(config, rng);
    let built = Cell::new(0_u32);
    let refused = RefCell::new(BTreeMap::<String, u32>::new());
    let done = runner.run(&draw::file(), |text| match plan_of(&text) {
        Err(findings) => {
            for finding in &findings {
                *refused
                    .borrow_mut()
                    .entry(finding.code.to_owned())
                    .or_default() += 1;
            }
            check_refusal(&text, &findings)
        }
        Ok(plan) => {
            built.set(built.get() + 1);
            check_built(&plan, &text)
        }
    });
    println!(
        "{} of {} designs could be built; refused for {:?}",
        built.get(),
        cases(),
        refused.borrow()
    );
    if let Err(fault) = done {
        panic!("{fault}");
    }
    assert!(
        built.get() * 5 >= cases(),
        "only {} of {} designs could be built",
        built.get(),
        cases()
    );
}
