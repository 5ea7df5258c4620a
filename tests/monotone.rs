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
