//! What is stronger, shorter or wider never turns out worse: rules asked along a row of values of one key.

#![expect(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use islandwright::design::{self, Change};
use islandwright::diagnostics::Verdict;
use islandwright::pipeline::shipped_trade;
use islandwright::plan;
use islandwright::rules::{self, Subject};

/// The gravest verdict of a rule on the sound island with some keys written otherwise; `None` where that cannot be built.
fn worst(code: &str, changes: &[(&str, &str)]) -> Option<Verdict> {
    let text = include_str!("cases/sound.yaml");
    let changes: Vec<_> = changes.iter().map(|(k, v)| Change::write(k, v)).collect();
    let design = design::from_text_changed(text, shipped_trade(), &changes).ok()?;
    let plan = plan::lay_out(design).ok()?;
    let answers = rules::ask(rules::rule(code).unwrap(), &Subject::new(&plan));
    answers.iter().map(|f| f.verdict).max()
}

/// Asks along values that make it ever better; gives the verdicts.
fn along(code: &str, key: &str, values: &[&str], fixed: &[(&str, &str)]) -> Vec<Verdict> {
    let of = |value: &&str| worst(code, &[fixed, &[(key, *value)]].concat());
    let verdicts: Vec<_> = values.iter().filter_map(of).collect();
    assert!(verdicts.len() > 3, "{code}, {key}: {verdicts:?}");
    for pair in verdicts.windows(2) {
        assert!(pair[1] <= pair[0], "{code} along {key}: {verdicts:?}");
    }
    verdicts
}

/// The same, and both ends of the row must differ, so that something was seen.
fn turns(code: &str, key: &str, values: &[&str], fixed: &[(&str, &str)]) {
    let verdicts = along(code, key, values, fixed);
    assert_ne!(
        verdicts.first(),
        verdicts.last(),
        "{code} along {key}: {verdicts:?}"
    );
}

const THICK: [&str; 8] = [
    "1 in", "1-1/4 in", "1-1/2 in", "2 in", "2-1/2 in", "3 in", "4 in", "5 in",
];
/// High enough for every thickness above the drawers.
const HIGH: (&str, &str) = ("levels.counter", "42 in");
const PLAIN: (&str, &str) = ("counter.reinforcement", "{corner_bars: true}");

#[test]
fn a_thicker_slab_never_fails_where_a_thinner_one_passed() {
    let bare = [HIGH, PLAIN, ("counter.brackets", "")];
    turns("slab-overhang-bending", "counter.thickness", &THICK, &bare);
    turns("slab-joints", "counter.thickness", &THICK, &[HIGH]);
    along("slab-overhang-shear", "counter.thickness", &THICK, &bare);
    along("slab-rail-bending", "counter.thickness", &THICK, &bare);
    along("ground-sliding", "counter.thickness", &THICK, &[HIGH]);
}

#[test]
fn a_longer_overhang_never_passes_where_a_shorter_one_failed() {
    let shorter = [
        "20 in", "16 in", "14 in", "12 in", "11 in", "10 in", "8 in", "6 in", "4 in", "2 in",
    ];
    let bare = [PLAIN, ("counter.brackets", "")];
    for code in ["slab-overhang-bending", "slab-overhang-practice"] {
        turns(code, "counter.overhang.seating", &shorter, &bare);
    }
    along(
        "ground-overturning",
        "counter.overhang.seating",
        &shorter,
        &bare,
    );
    along(
        "slab-overhang-shear",
        "counter.overhang.seating",
        &shorter,
        &bare,
    );
}

#[test]
fn more_vent_area_is_never_worse() {
    let wider = [
        "1 in", "2 in", "3 in", "4 in", "5 in", "6 in", "8 in", "10 in", "12 in",
    ];
    let own = "[{name: gas-vent-area, value: 12 sq in, source: the grill's instructions}]";
    let high = ("openings[high vent].sill", "25-3/4 in");
    let fixed = [high, ("limits", own)];
    turns(
        "gas-ventilation",
        "openings[high vent].width",
        &wider,
        &fixed,
    );
    turns(
        "gas-ventilation",
        "openings[low vent].width",
        &wider,
        &fixed,
    );
    let freer = ["5 %", "20 %", "35 %", "50 %", "75 %", "100 %"];
    let key = "openings[high vent].free_area";
    turns("gas-ventilation", key, &freer, &fixed);
}

#[test]
fn a_larger_gas_pipe_never_fails_where_a_smaller_one_passed() {
    let larger = ["1/2 in", "3/4 in", "1 in", "1-1/4 in"];
    let heat = [("appliances[grill].heat_input", "150,000 Btu/h")];
    for code in ["gas-pipe-size", "gas-pressure-drop"] {
        turns(code, "gas.pipes[from the house].size", &larger, &heat);
    }
}

#[test]
fn what_can_burn_is_never_worse_farther_off() {
    let farther: Vec<String> = (20..60)
        .step_by(4)
        .map(|y| {
            format!("[{{name: fence, kind: fence, combustible: true, at: {{x: -40 in, y: {y} in, z: 0 in}}, size: {{x: 200 in, y: 2 in, z: 60 in}}}}]")
        })
        .collect();
    let farther: Vec<&str> = farther.iter().map(String::as_str).collect();
    turns("heat-clearance", "site.objects", &farther, &[]);
}
