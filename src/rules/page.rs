//! The documentation of the rules in words: one rule, the list of codes, the whole page.

use super::{BY_FAMILY, Family, Limit, Rule, rules};
use crate::units::{Notation, Unit};
use std::fmt::Write;

const HEAD: &str = "\
# The checks

This page is made from the rules in the program; `islandwright explain --all` prints it, and a test compares the two.
`islandwright explain CODE` prints one of them.

A check answers `pass`, `caution`, `fail` or `not checked`. A caution holds, with a warning; what is not checked lacks a key, which is named.
**The program computes; it does not license.** A limit is called code only where its source is named with edition and section; `common practice` is what
builders do and has no source; `value from memory` was written down from memory and should be looked up before it is relied on. Any limit can be set
otherwise in the parameter file, with where it comes from:

    limits:
      - {name: overhang-without-brackets, value: 10 in, source: our building department}

";

/// The documentation of one rule.
pub fn explain(rule: &Rule) -> String {
    let mut text = format!(
        "# {}\n\n{}\n\n{}.\n",
        rule.code,
        rule.family.name(),
        rule.title
    );
    body(&mut text, rule, "##");
    let _ = writeln!(text, "\n## Caution\n\n{}", sentence(rule.family.caution()));
    text
}

/// The parts of a rule's documentation, under headings of a level.
fn body(text: &mut String, rule: &Rule, level: &str) {
    let about = &rule.about;
    for (heading, part) in [
        ("What it checks", about.checks),
        ("Why", about.why),
        ("How it is reckoned", about.reckoned),
        ("Example", about.example),
    ] {
        let _ = write!(text, "\n{level} {heading}\n\n{part}\n");
    }
    let _ = write!(text, "\n{level} Limits\n\n");
    if rule.limits.is_empty() {
        text.push_str("None: it tells what there is.\n");
    } else {
        text.push_str("| limit | what it limits | usual | source |\n| --- | --- | --- | --- |\n");
    }
    for limit in rule.limits {
        let _ = writeln!(
            text,
            "| `{}` | {} | {} | {} |",
            limit.name,
            limit.what,
            usual(limit),
            limit.source
        );
    }
    if !rule.levers.is_empty() {
        let levers: Vec<String> = rule.levers.iter().map(|l| format!("`{l}`")).collect();
        let _ = write!(text, "\n`--fix-hints` tries {}.\n", levers.join(", "));
    }
    let _ = write!(text, "\n{level} Held against\n\n");
    for outside in rule.outside {
        let _ = writeln!(text, "- {} ({})", outside.what, outside.origin.name());
    }
}

/// A limit's usual value in both notations, or once where they are the same.
fn usual(limit: &Limit) -> String {
    let [imperial, metric] =
        [Notation::Imperial, Notation::Metric].map(|n| limit.unit.spell(limit.usual, n));
    match limit.unit {
        _ if imperial == metric => imperial,
        Unit::Length if metric == "0 mm" => format!("{imperial}, {:.1} mm", limit.usual),
        _ => format!("{imperial}, {metric}"),
    }
}

/// A clause as a sentence.
fn sentence(clause: &str) -> String {
    let mut letters = clause.chars();
    let first = letters
        .next()
        .map(|c| c.to_uppercase().to_string())
        .unwrap_or_default();
    format!("{first}{}.", letters.as_str())
}

/// The rules of each family.
fn families() -> impl Iterator<Item = (Family, &'static [&'static Rule])> {
    Family::ALL.into_iter().zip(BY_FAMILY)
}

/// All codes with what they ask, by family.
pub fn list() -> String {
    let width = rules().map(|r| r.code.len()).max().unwrap_or(0);
    let mut text = String::new();
    for (family, rules) in families() {
        let _ = writeln!(text, "{}", family.name());
        for rule in rules {
            let _ = writeln!(text, "  {:width$}  {}", rule.code, rule.title);
        }
        text.push('\n');
    }
    text.push_str(
        "'islandwright explain CODE' says what a check asks, why, and how it is reckoned\n",
    );
    text
}

/// The page that documents every rule.
pub fn page() -> String {
    let mut text = HEAD.to_owned();
    text.push_str("| check | asks |\n| --- | --- |\n");
    for rule in rules() {
        let _ = writeln!(text, "| [`{0}`](#{0}) | {1} |", rule.code, rule.title);
    }
    for (family, rules) in families() {
        let _ = write!(
            text,
            "\n## {}\n\n{}\n",
            family.name(),
            sentence(family.caution())
        );
        for rule in rules {
            let _ = write!(text, "\n### {}\n\n{}.\n", rule.code, rule.title);
            body(&mut text, rule, "####");
        }
    }
    text.push_str(&outside_table());
    text
}

/// Every rule with what its tests hold it against.
fn outside_table() -> String {
    let mut text = "\n## What each check was held against\n\nA test that only agrees with the code's own formula proves little. Each rule is held against something that nobody here wrote; \
                    the last column names the test.\n\n| check | held against | from | test |\n| --- | --- | --- | --- |\n"
        .to_owned();
    for rule in rules() {
        for outside in rule.outside {
            let _ = writeln!(
                text,
                "| `{}` | {} | {} | `{}` |",
                rule.code,
                outside.what,
                outside.origin.name(),
                outside.test
            );
        }
    }
    text
}
