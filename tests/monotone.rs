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
