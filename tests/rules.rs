//! Every rule is documented, sourced and held against something from outside; the page says so.

#![expect(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use islandwright::pipeline;
use islandwright::rules::{self, BY_FAMILY, Family, Limit, Origin, Outside};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

#[test]
fn the_committed_page_is_made_from_the_rules() {
    let committed = std::fs::read_to_string("docs/checks.md").unwrap();
    assert!(
        committed == pipeline::rule_page(),
        "renew it: cargo run -- explain --all > docs/checks.md"
    );
}

#[test]
fn codes_are_unique_and_belong_to_their_family() {
    for (family, rules) in Family::ALL.into_iter().zip(BY_FAMILY) {
        assert!(!rules.is_empty(), "{}", family.name());
        for rule in rules {
            assert_eq!(rule.family, family, "{}", rule.code);
            let mut prefixes = family.prefixes().iter();
            assert!(prefixes.any(|p| rule.code.starts_with(p)), "{}", rule.code);
        }
    }
    let mut codes: Vec<_> = rules::rules().map(|r| r.code).collect();
    let all = codes.len();
    codes.sort_unstable();
    codes.dedup();
    assert_eq!(codes.len(), all);
    assert!(all >= 60, "{all}");
}

#[test]
fn every_rule_is_documented_and_every_limit_has_a_source() {
    for rule in rules::rules() {
        let about = [
            rule.about.checks,
            rule.about.why,
            rule.about.reckoned,
            rule.about.example,
        ];
        for part in about {
            assert!(part.len() > 20, "{}: {part}", rule.code);
            assert!(!part.contains("  "), "{}: {part}", rule.code);
        }
        assert!(
            !rule.title.ends_with('.') && !rule.title.is_empty(),
            "{}",
            rule.code
        );
        for limit in rule.limits {
            assert!(
                !limit.what.is_empty() && limit.source.len() > 5,
                "{}",
                limit.name
            );
            assert!(
                limit.usual.is_finite() && limit.usual >= 0.0,
                "{}",
                limit.name
            );
        }
    }
}

#[test]
fn a_limit_has_one_name_and_one_value() {
    let mut known: BTreeMap<&str, &Limit> = BTreeMap::new();
    for limit in rules::limits() {
        if let Some(other) = known.insert(limit.name, limit) {
            assert_eq!(other, limit, "{}", limit.name);
        }
    }
}

/// Every file below a folder with an ending.
fn files(folder: &Path, ending: &str, found: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() && !path.ends_with(".venv") {
            files(&path, ending, found);
        } else if path.extension().is_some_and(|e| e == ending) {
            found.push(path);
        }
    }
}

#[test]
fn every_rule_is_held_against_something_from_outside_by_a_test_that_exists() {
    let mut sources = Vec::new();
    for (folder, ending) in [
        ("src/rules", "rs"),
        ("tests", "rs"),
        ("tests/outside", "py"),
    ] {
        files(Path::new(folder), ending, &mut sources);
    }
    let texts: Vec<_> = sources
        .iter()
        .map(|p| std::fs::read_to_string(p).unwrap())
        .collect();
    let is_there = |test: &str| {
        let (rust, python) = (format!("fn {test}("), format!("def {test}("));
        texts
            .iter()
            .any(|t| t.contains(&rust) || t.contains(&python))
    };
    for rule in rules::rules() {
        // What we worked ourselves from a formula is no value from outside.
        let outside = |o: &Outside| o.origin != Origin::Worked;
        assert!(rule.outside.iter().any(outside), "{}", rule.code);
        for outside in rule.outside {
            assert!(is_there(outside.test), "{}: {}", rule.code, outside.test);
            assert!(outside.what.len() > 10, "{}", rule.code);
        }
    }
}

#[test]
fn explain_prints_all_parts_of_a_rule() {
    for code in pipeline::codes() {
        let text = pipeline::explain(code).unwrap();
        for heading in [
            "What it checks",
            "Why",
            "How it is reckoned",
            "Example",
            "Limits",
            "Held against",
            "Caution",
        ] {
            assert!(
                text.contains(&format!("## {heading}\n")),
                "{code}: {heading}"
            );
        }
    }
    assert!(pipeline::explain("no-such-code").is_none());
}

/// What a rule's file says where one of the verdicts cannot come of it.
const CANNOT: [&str; 9] = [
    "cannot",
    "can be missing",
    "neither",
    "Neither",
    "nothing unchecked",
    "left unchecked",
    "never",
    "no answer",
    "not occur",
];

#[test]
fn the_tests_of_each_rule_show_every_verdict_or_say_why_not() {
    let mut sources = Vec::new();
    files(Path::new("src/rules"), "rs", &mut sources);
    let texts: Vec<_> = sources
        .iter()
        .map(|p| std::fs::read_to_string(p).unwrap())
        .collect();
    let mut wrong = Vec::new();
    for rule in rules::rules() {
        let code = format!("code: \"{}\"", rule.code);
        let text = texts.iter().find(|t| t.contains(&code)).unwrap();
        let tests = text.split_once("mod tests {").map_or("", |t| t.1);
        let said: String = tests
            .lines()
            .filter(|l| l.trim_start().starts_with("//"))
            .collect();
        for verdict in ["Pass", "Caution", "Fail", "NotChecked"] {
            let shown = tests.contains(&format!("Verdict::{verdict}"));
            if !shown && !CANNOT.iter().any(|c| said.contains(c)) {
                wrong.push(format!("{}: {verdict}", rule.code));
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}
