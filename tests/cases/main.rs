//! Designs of ours with what the rules must say about them, written in the files.
//!
//! A comment `# finds: CODE fail, CODE caution` at the end of a line says what the rules find on that line; a comment line
//! `# finds without a line: …` says what they find on no line. A code said so many times over is `3 × CODE fail`. Every
//! failure and every caution of a rule must be there, and nothing else; passes and what is not checked are left out.

#![expect(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use islandwright::diagnostics::{Finding, Verdict};
use islandwright::pipeline::{examine, shipped_trade};
use islandwright::rules;
use std::collections::{BTreeMap, BTreeSet};

const BROKEN: [&str; 3] = ["courtyard", "riverbank", "rooftop"];

/// Line, code and verdict with how often they are found.
type Found = BTreeMap<(usize, String, String), usize>;

fn text(name: &str) -> String {
    std::fs::read_to_string(format!("tests/cases/{name}.yaml")).unwrap()
}

/// What the comments of a file expect.
fn expected(text: &str) -> Found {
    let mut found = Found::new();
    for (line, number) in text.lines().zip(1..) {
        let (said, at) = if let Some((_, said)) = line.split_once("# finds without a line: ") {
            (said, 0)
        } else if let Some((_, said)) = line.split_once("# finds: ") {
            (said, number)
        } else {
            continue;
        };
        for one in said.split(", ") {
            let (count, rest) = match one.split_once(" × ") {
                Some((count, rest)) => (count.parse().unwrap(), rest),
                None => (1, one),
            };
            let (code, verdict) = rest.split_once(' ').unwrap();
            assert!(rules::rule(code).is_some(), "line {number}: {code}");
            *found
                .entry((at, code.to_owned(), verdict.to_owned()))
                .or_default() += count;
        }
    }
    found
}

/// What the rules find: failures and cautions.
fn said(text: &str) -> Vec<Finding> {
    let found = examine(text, shipped_trade()).unwrap();
    let notable = |f: &Finding| matches!(f.verdict, Verdict::Fail | Verdict::Caution);
    let of_rules = found
        .into_iter()
        .filter(|f| rules::rule(f.code).is_some() && notable(f));
    of_rules.collect()
}

fn counted(findings: &[Finding]) -> Found {
    let mut found = Found::new();
    for f in findings {
        let key = (f.place.line, f.code.to_owned(), f.verdict.word().to_owned());
        *found.entry(key).or_default() += 1;
    }
    found
}

fn codes(findings: &[Finding]) -> BTreeSet<&'static str> {
    findings.iter().map(|f| f.code).collect()
}

#[test]
fn each_broken_design_is_found_out_where_its_comments_say() {
    for name in BROKEN {
        let text = text(name);
        let findings = said(&text);
        assert_eq!(counted(&findings), expected(&text), "{name}");
        let failing: Vec<_> = findings
            .iter()
            .filter(|f| f.verdict == Verdict::Fail)
            .cloned()
            .collect();
        assert!(codes(&failing).len() >= 12, "{name}: {:?}", codes(&failing));
    }
}

#[test]
fn every_rule_is_tripped_by_some_case() {
    let tripped: BTreeSet<_> = BROKEN.iter().flat_map(|n| codes(&said(&text(n)))).collect();
    let missing: Vec<_> = rules::rules()
        .map(|r| r.code)
        .filter(|c| !tripped.contains(c))
        .collect();
    assert!(missing.is_empty(), "{missing:?}");
}

#[test]
fn the_sound_island_fails_nowhere_and_leaves_nothing_unchecked() {
    let found = examine(&text("sound"), shipped_trade()).unwrap();
    let bad: Vec<_> = found
        .iter()
        .filter(|f| matches!(f.verdict, Verdict::Fail | Verdict::NotChecked))
        .collect();
    assert!(bad.is_empty(), "{bad:#?}");
}

#[test]
fn every_rule_answers_about_every_example_and_none_fails() {
    for entry in std::fs::read_dir("params").unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_none_or(|e| e != "yaml") {
            continue;
        }
        let text = std::fs::read_to_string(&path).unwrap();
        let found = examine(&text, shipped_trade()).unwrap();
        let failing: Vec<_> = found
            .iter()
            .filter(|f| f.verdict == Verdict::Fail)
            .collect();
        assert!(failing.is_empty(), "{}: {failing:#?}", path.display());
        for rule in rules::rules() {
            let answers = found.iter().filter(|f| f.code == rule.code).count();
            assert!(answers > 0, "{}: {}", path.display(), rule.code);
        }
    }
}
