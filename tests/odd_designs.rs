//! Designs that say too little and limits that say too much: the rules still answer, name the right key and print numbers
//! that people can read.

#![expect(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use islandwright::design::{self, Change};
use islandwright::diagnostics::{Finding, Verdict};
use islandwright::pipeline::shipped_trade;
use islandwright::{plan, rules};
use serde_yaml::Value;
use std::collections::{BTreeMap, BTreeSet};

const SOUND: &str = include_str!("cases/sound.yaml");

/// What the rules say once the changes are made; `None` when it cannot be built so.
fn answers(changes: &[Change]) -> Option<Vec<Finding>> {
    let design = design::from_text_changed(SOUND, shipped_trade(), changes).ok()?;
    // A group that lacks what belongs to it is told by the design itself, and its rules ask for the whole group.
    let whole = design
        .findings
        .iter()
        .all(|f| f.verdict == Verdict::Pass || f.code.ends_with("-limit"));
    if !whole {
        return None;
    }
    let plan = plan::lay_out(design).ok()?;
    Some(rules::check(&rules::Subject::new(&plan)))
}

/// Every key of the file, as findings spell it.
fn keys(value: &Value, at: &str, found: &mut Vec<String>) {
    let mut go = |key: String, value: &Value| {
        found.push(key.clone());
        keys(value, &key, found);
    };
    match value {
        Value::Mapping(map) => {
            for (k, v) in map {
                let k = k.as_str().unwrap();
                go(
                    if at.is_empty() {
                        k.to_owned()
                    } else {
                        format!("{at}.{k}")
                    },
                    v,
                );
            }
        }
        Value::Sequence(list) => {
            for (i, v) in list.iter().enumerate() {
                go(format!("{at}[{}]", i + 1), v);
            }
        }
        _ => {}
    }
}

/// Numbers that no builder reads: what is not a number, has no end, or is a zero with a sign.
fn unreadable(finding: &Finding) -> bool {
    let texts = [&finding.found, &finding.limit, &finding.hint];
    let words = texts.iter().flat_map(|t| {
        let apart = t.split(|c: char| c.is_whitespace() || "(),;:".contains(c));
        apart.map(|w| w.trim_matches('\''))
    });
    let bad = |w: &str| {
        let plain = w.trim_start_matches('-');
        let is_number = plain.starts_with(|c: char| c.is_ascii_digit());
        let is_zero = is_number && !plain.contains(|c: char| ('1'..='9').contains(&c));
        ["NaN", "inf"].contains(&plain)
            || is_number && plain.len() > 15
            || is_zero && w.starts_with('-')
    };
    words.into_iter().any(bad)
}

/// True when the key that is asked for is the one left out, in it or around it. An entry that is yet to be written has no
/// number.
fn is_asked_for(left_out: &str, asked: &str) -> bool {
    let key = left_out.split_once('[').filter(|_| asked.contains("[]"));
    let key = key.map_or(left_out, |k| k.0);
    !asked.is_empty() && (asked.starts_with(key) || key.starts_with(asked))
}

fn subjects(findings: &[Finding]) -> BTreeSet<(&str, &str)> {
    let open = findings.iter().filter(|f| f.verdict == Verdict::NotChecked);
    open.map(|f| (f.code, f.subject.as_str())).collect()
}

#[test]
fn a_key_left_out_is_the_key_that_is_asked_for() {
    let mut all = Vec::new();
    keys(&serde_yaml::from_str(SOUND).unwrap(), "", &mut all);
    assert!(all.len() > 200, "{}", all.len());
    let sound = answers(&[]).unwrap();
    let known = subjects(&sound);
    let mut wrong = Vec::new();
    for key in &all {
        let Some(found) = answers(&[Change::leave_out(key)]) else {
            continue;
        };
        let said: BTreeSet<_> = found.iter().map(|f| f.code).collect();
        for rule in rules::rules() {
            if !said.contains(rule.code) {
                wrong.push(format!("{key}: {} says nothing", rule.code));
            }
        }
        for f in &found {
            if unreadable(f) {
                wrong.push(format!("{key}: {}: {} | {}", f.code, f.found, f.limit));
            }
            let is_new =
                f.verdict == Verdict::NotChecked && !known.contains(&(f.code, f.subject.as_str()));
            if is_new && !is_asked_for(key, &f.place.key) {
                wrong.push(format!(
                    "{key}: {} asks for '{}': {}",
                    f.code, f.place.key, f.found
                ));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// All limits set to one number, each in a unit of its own.
fn all_limits(number: &str) -> Change {
    let units = [
        "",
        " in",
        " sq in",
        " lb",
        " psi",
        " in w.c.",
        " Btu/h",
        " %",
        " in per ft",
    ];
    let limits: BTreeMap<_, _> = rules::limits().map(|l| (l.name, l.unit)).collect();
    let own = limits.into_iter().filter_map(|(name, unit)| {
        let mut texts = units.iter().map(|u| format!("{number}{u}"));
        let text = texts.find(|t| unit.read(t).is_ok())?;
        Some(format!("{{name: {name}, value: {text}}}"))
    });
    Change::write(
        "limits",
        &format!("[{}]", own.collect::<Vec<_>>().join(", ")),
    )
}

#[test]
fn limits_may_be_absurd() {
    for number in ["0", "0.000001", "1000", "1000000"] {
        let found = answers(&[all_limits(number)]).unwrap();
        let wrong: Vec<_> = found.iter().filter(|f| unreadable(f)).collect();
        assert!(wrong.is_empty(), "{number}: {wrong:#?}");
    }
    // Less than nothing is no limit: it is refused by name, and the usual one holds.
    let below = answers(&[all_limits("-5")]).unwrap();
    let refused = below.iter().filter(|f| f.code == "bad-limit").count();
    let names: BTreeSet<_> = rules::limits().map(|l| l.name).collect();
    assert!(refused + 20 > names.len() && refused > 60, "{refused}");
    let others = below.iter().filter(|f| f.code != "bad-limit").count();
    assert_eq!(others, answers(&[]).unwrap().len());
}
