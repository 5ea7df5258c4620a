//! All rules asked of one design.

use super::{Answers, Limit, Rule, Subject, bound, rules};
use crate::diagnostics::{Finding, in_order};

/// The rule with a code.
pub fn rule(code: &str) -> Option<&'static Rule> {
    rules().find(|r| r.code == code)
}

/// The limits of all rules; a limit that several rules share comes once for each.
pub fn limits() -> impl Iterator<Item = &'static Limit> + Clone {
    rules().flat_map(|r| r.limits.iter().copied())
}

/// The answers of one rule.
pub fn ask(rule: &Rule, subject: &Subject) -> Vec<Finding> {
    let mut answers = Answers::of(rule);
    (rule.check)(subject, &mut answers);
    answers.into_findings()
}

/// The answers of all rules, and what is wrong with the limits that the file sets, in the order of the file.
pub fn check(subject: &Subject) -> Vec<Finding> {
    let mut findings = bound::faults(subject.design(), &limits().collect::<Vec<_>>());
    for rule in rules() {
        findings.extend(ask(rule, subject));
    }
    in_order(findings)
}
