//! The documentation of the rules in words.

use super::{Rule, rules};

/// The documentation of one rule.
pub fn explain(rule: &Rule) -> String {
    format!("{}: {}\n", rule.code, rule.title)
}

/// All codes with what they ask.
pub fn list() -> String {
    rules().map(explain).collect()
}

/// The page that documents every rule.
pub fn page() -> String {
    list()
}
