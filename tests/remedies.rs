//! `check --fix-hints`: the change that is named really turns the failure, and no smaller one does.

#![expect(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use islandwright::design::{self, Change};
use islandwright::diagnostics::{Finding, Remedy, Verdict};
use islandwright::pipeline::{examine, shipped_trade, with_remedies};
use islandwright::{plan, rules};

const SOUND: &str = include_str!("cases/sound.yaml");

/// The failures of one rule, each with its remedy.
fn failures(text: &str, code: &str) -> Vec<Finding> {
    let found = examine(text, shipped_trade()).unwrap();
    let failing = found
        .into_iter()
        .filter(|f| f.code == code && f.verdict == Verdict::Fail);
    with_remedies(text, shipped_trade(), failing.collect())
}

/// The gravest verdict of a rule about a subject once a key is written otherwise.
fn then(text: &str, finding: &Finding, key: &str, value: &str) -> Verdict {
    let change = [Change::write(key, value)];
    let design = design::from_text_changed(text, shipped_trade(), &change).unwrap();
    let plan = plan::lay_out(design).unwrap();
    let answers = rules::ask(
        rules::rule(finding.code).unwrap(),
        &rules::Subject::new(&plan),
    );
    let about = answers.iter().filter(|f| f.subject == finding.subject);
    about.map(|f| f.verdict).max().unwrap()
}

#[test]
fn a_narrow_flange_is_told_the_width_that_covers() {
    let text = SOUND.replacen(
        "flange: 3/4 in\n    front: {closed",
        "flange: 1/4 in\n    front: {closed",
        1,
    );
    let found = failures(&text, "fit-flange-cover");
    assert_eq!(found.len(), 1);
    // Paper: the limit is 3/8 in, and lengths move by sixteenths.
    let remedy = Remedy {
        key: "appliances[2].flange".to_owned(),
        now: "1/4 in".to_owned(),
        write: "3/8 in".to_owned(),
        then: Verdict::Pass,
        breaks: None,
    };
    assert_eq!(found[0].remedy.as_ref(), Some(&remedy));
    assert_eq!(then(&text, &found[0], &remedy.key, "3/8 in"), Verdict::Pass);
    assert_eq!(
        then(&text, &found[0], &remedy.key, "5/16 in"),
        Verdict::Fail
    );
}

#[test]
fn a_tight_box_is_told_the_volume_that_holds() {
    let text = SOUND.replacen("volume: 20.3 cu in", "volume: 10 cu in", 1);
    let found = failures(&text, "power-box-fill");
    // NEC 314.16(B): 2.25 × (2 + 2 + 1) = 11.25 cu in; at 12.5 it is nine tenths full, which is not tight.
    let remedy = found[0].remedy.as_ref().unwrap();
    assert_eq!(
        (remedy.key.as_str(), remedy.write.as_str(), remedy.then),
        ("openings[7].box.volume", "12.5 cu in", Verdict::Pass)
    );
}

#[test]
fn a_key_that_the_file_leaves_out_can_be_the_change() {
    // Without its own value the seating side takes that of the working side: 14 in, where common practice ends at 12 without
    // brackets; nine tenths of it, 10.8 in, pass without a word: 10-3/4.
    let text = SOUND
        .replacen("working: 2 in, seating: 10 in", "working: 14 in", 1)
        .replacen("  brackets: {spacing: 24 in, reach: 8 in}\n", "", 1);
    let found = failures(&text, "slab-overhang-practice");
    let seating = found.iter().find(|f| f.subject.ends_with("seating side"));
    let remedy = seating.unwrap().remedy.as_ref().unwrap();
    assert_eq!(
        (remedy.key.as_str(), remedy.write.as_str()),
        ("counter.overhang.seating", "10-3/4 in")
    );
}

#[test]
fn what_a_change_breaks_elsewhere_is_said() {
    // A receptacle under the seats: 6 in of overhang would free it, and would leave the knees no room.
    let text = SOUND.replacen(
        "    side: right\n    at: {from: working, distance: 15 in}",
        "    side: seating\n    at: {from: right, distance: 6 in}",
        1,
    );
    let found = failures(&text, "power-receptacle-seat");
    let remedy = found[0].remedy.as_ref().unwrap();
    assert_eq!(
        (remedy.key.as_str(), remedy.write.as_str(), remedy.breaks),
        ("counter.overhang.seating", "6 in", Some("people-knee"))
    );
    assert!(
        remedy.spell().ends_with("; people-knee then fails"),
        "{}",
        remedy.spell()
    );
}

#[test]
fn every_lever_of_every_rule_is_known() {
    for rule in rules::rules() {
        for lever in rule.levers {
            assert!(design::is_lever(lever), "{}: {lever}", rule.code);
        }
    }
}
