//! The answers of one rule as it gives them.

use super::{Bound, Rule};
use crate::diagnostics::{Finding, Place, Verdict};

/// The answers of one rule.
#[derive(Debug)]
pub struct Answers {
    code: &'static str,
    findings: Vec<Finding>,
}

/// One answer, still open to what else is known of it.
#[derive(Debug)]
pub struct Answer<'a>(&'a mut Finding);

impl Answers {
    /// No answers yet.
    pub fn of(rule: &Rule) -> Self {
        Self {
            code: rule.code,
            findings: Vec::new(),
        }
    }

    /// True as long as nothing is answered.
    pub fn is_empty(&self) -> bool {
        self.findings.is_empty()
    }

    /// Everything answered, in the order it was.
    pub fn into_findings(mut self) -> Vec<Finding> {
        // What holds needs nothing put right, whatever the rule said before it knew.
        for finding in self
            .findings
            .iter_mut()
            .filter(|f| f.verdict == Verdict::Pass)
        {
            finding.hint.clear();
        }
        self.findings
    }

    /// An answer with a verdict, about a place in the file.
    pub fn say(&mut self, verdict: Verdict, place: &Place, found: impl Into<String>) -> Answer<'_> {
        let mut finding = Finding::error(self.code, place, found);
        finding.verdict = verdict;
        let at = self.findings.len();
        self.findings.push(finding);
        Answer(&mut self.findings[at])
    }

    /// It holds.
    pub fn pass(&mut self, place: &Place, found: impl Into<String>) -> Answer<'_> {
        self.say(Verdict::Pass, place, found)
    }

    /// It holds, with a warning.
    pub fn caution(&mut self, place: &Place, found: impl Into<String>) -> Answer<'_> {
        self.say(Verdict::Caution, place, found)
    }

    /// It does not hold.
    pub fn fail(&mut self, place: &Place, found: impl Into<String>) -> Answer<'_> {
        self.say(Verdict::Fail, place, found)
    }

    /// It holds or it does not.
    pub fn judge(&mut self, holds: bool, place: &Place, found: impl Into<String>) -> Answer<'_> {
        let verdict = if holds { Verdict::Pass } else { Verdict::Fail };
        self.say(verdict, place, found)
    }

    /// It could not be checked because a key is missing below an entry or group of the file. `entry` is the place of the
    /// group that should hold it (its key is extended), `key` the key to write, and `found` what is not known.
    pub fn missing(&mut self, entry: &Place, key: &str, found: impl Into<String>) -> Answer<'_> {
        let full = if entry.key.is_empty() {
            key.to_owned()
        } else {
            format!("{}.{key}", entry.key)
        };
        let place = Place {
            key: full.clone(),
            ..entry.clone()
        };
        self.say(Verdict::NotChecked, &place, found)
            .hint(format!("write '{full}' in the file"))
    }

    /// Nothing of what the rule asks about is in the design: a pass, said as such.
    pub fn nothing(&mut self, found: impl Into<String>) -> Answer<'_> {
        self.say(Verdict::Pass, &Place::default(), found)
    }
}

impl Answer<'_> {
    /// What it is about where the place does not say it all: a part's mark, the name of an appliance.
    pub fn about(self, subject: impl Into<String>) -> Self {
        self.0.subject = subject.into();
        self
    }

    /// The limit it was held against, in words, and where it comes from.
    pub fn limit(self, limit: impl Into<String>, source: impl Into<String>) -> Self {
        self.0.limit = limit.into();
        self.0.source = source.into();
        self
    }

    /// The limit it was held against: `at most 12"`, with its source.
    pub fn at_most(self, bound: &Bound) -> Self {
        self.limit(format!("at most {}", bound.spell()), bound.source.clone())
    }

    /// The limit it was held against: `at least 12"`, with its source.
    pub fn at_least(self, bound: &Bound) -> Self {
        self.limit(format!("at least {}", bound.spell()), bound.source.clone())
    }

    /// What would put it right.
    pub fn hint(self, hint: impl Into<String>) -> Self {
        self.0.hint = hint.into();
        self
    }
}
