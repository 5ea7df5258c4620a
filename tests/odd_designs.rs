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
        " °F",
        " kg/m2/h",
        " h",
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

/// Whether everything is answered, in numbers that can be read; what is not.
fn faults(name: &str, found: &[Finding]) -> Vec<String> {
    let said: BTreeSet<_> = found.iter().map(|f| f.code).collect();
    let silent = rules::rules().filter(|r| !said.contains(r.code));
    let silent = silent.map(|r| format!("{name}: {} says nothing", r.code));
    let bad = found.iter().filter(|f| unreadable(f));
    let bad = bad.map(|f| format!("{name}: {}: {} | {} | {}", f.code, f.found, f.limit, f.hint));
    silent.chain(bad).collect()
}

#[test]
fn odd_islands_are_answered() {
    let one = "[{name: cook, length: 10 ft, depth: 30 in}]";
    let walls = "[{name: cook, length: 10 ft, depth: 30 in, walls: [left, right, seating]}]";
    let long = "[{name: cook, length: 320 ft, depth: 30 in}]";
    let bare = || {
        [
            "appliances",
            "openings",
            "gas",
            "electricity",
            "counter.joints",
            "people.seats",
            "as_built",
        ]
        .map(Change::leave_out)
        .to_vec()
    };
    let with = |changes: &[(&str, &str)]| {
        let more = changes.iter().map(|(k, v)| Change::write(k, v));
        bare().into_iter().chain(more).collect::<Vec<_>>()
    };
    let flush = (
        "counter.overhang",
        "{working: 0 in, seating: 0 in, left: 0 in, right: 0 in}",
    );
    let no_rim = ("counter.turndown", "{sides: []}");
    let cases = [
        ("nothing in it", bare()),
        ("one run", with(&[("runs", one)])),
        ("walls", with(&[("runs", walls)])),
        (
            "walls and brackets on a deck",
            with(&[("runs", walls), ("site.surface", "deck")]),
        ),
        (
            "as long as a run may be",
            with(&[("runs", long), ("tile_band.laid", "false")]),
        ),
        (
            "flush",
            with(&[
                flush,
                no_rim,
                ("counter.corners", "sharp"),
                ("tile_band.laid", "false"),
            ]),
        ),
        ("only a title and a run", {
            let groups = [
                "trade",
                "levels",
                "counter",
                "tile_band",
                "site",
                "people",
                "printing",
            ];
            let mut all = with(&[("runs", one)]);
            all.extend(groups.map(Change::leave_out));
            all
        }),
    ];
    let mut wrong = Vec::new();
    for (name, changes) in cases {
        if let Some(found) = answers(&changes) {
            wrong.extend(faults(name, &found));
        } else {
            let design = design::from_text_changed(SOUND, shipped_trade(), &changes);
            let why = design.map(|d| (d.findings.clone(), plan::lay_out(d).err()));
            wrong.push(format!("{name} cannot be built: {why:?}"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn a_metric_file_is_told_nothing_in_feet() {
    let changes = [
        Change::write("project.units", "metric"),
        Change::write("counter.drip", "false"),
        Change::write("counter.overhang.seating", "14 in"),
        Change::write("tile_band.joint", "1/16 in"),
        Change::write("tile_band.tile_width", "18 in"),
        Change::leave_out("counter.brackets"),
        Change::leave_out("counter.reinforcement.mesh"),
    ];
    let found = answers(&changes).unwrap();
    let imperial = |text: &str| {
        let words = [
            "in", "ft", "psi", "psf", "lb", "foot", "feet", "inch", "inches",
        ];
        let mut apart: Vec<&str> = text
            .split(|c: char| c.is_whitespace() || "(),;:".contains(c))
            .collect();
        apart.retain(|w| !w.is_empty());
        text.contains('"')
            || apart
                .windows(2)
                .any(|w| words.contains(&w[1]) && w[0].ends_with(|c: char| c.is_ascii_digit()))
            || apart
                .iter()
                .any(|w| ["foot", "feet", "psi", "psf", "lb"].contains(w))
    };
    let wrong: Vec<_> = found
        .iter()
        // Pipe has its size in inches everywhere.
        .filter(|f| !f.code.starts_with("gas-"))
        .filter(|f| [&f.found, &f.limit, &f.hint].iter().any(|t| imperial(t)))
        .map(|f| format!("{}: {} | {} | {}", f.code, f.found, f.limit, f.hint))
        .collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
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
