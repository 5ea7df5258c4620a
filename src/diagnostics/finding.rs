//! One answer about the design or the file.

use super::{Place, Remedy};

/// How a check came out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Verdict {
    /// It holds.
    Pass,
    /// It could not be checked; `found` says what is missing.
    NotChecked,
    /// It holds, with a warning.
    Caution,
    /// It does not hold.
    Fail,
    /// The file cannot be used at all.
    Error,
}

impl Verdict {
    /// The word printed for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Pass => "pass",
            Self::NotChecked => "not checked",
            Self::Caution => "caution",
            Self::Fail => "fail",
            Self::Error => "error",
        }
    }
}

/// The answer of one check, or one error of a parameter file.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// A stable code, such as `plan-overlap`.
    pub code: &'static str,
    /// How it came out.
    pub verdict: Verdict,
    /// What it is about where the place does not say it all: a part's mark, the name of an appliance; may be empty.
    pub subject: String,
    /// Where in the file; `Place::default()` when it is about the file as a whole.
    pub place: Place,
    /// What was found, one sentence without a full stop.
    pub found: String,
    /// The limit it was held against; empty when there is none.
    pub limit: String,
    /// Where the limit comes from; empty when there is none.
    pub source: String,
    /// What would put it right; empty when nothing is known.
    pub hint: String,
    /// The smallest change of one key that would put it right, where it was looked for and found.
    pub remedy: Option<Remedy>,
}

/// Findings in the order of the file: by line and column, those without a place first.
pub fn in_order(mut findings: Vec<Finding>) -> Vec<Finding> {
    findings.sort_by_key(|f| (f.place.line, f.place.column));
    findings
}

impl Finding {
    /// A finding that the design cannot be used, at a place.
    pub fn error(code: &'static str, place: &Place, found: impl Into<String>) -> Self {
        Self {
            code,
            verdict: Verdict::Error,
            subject: String::new(),
            place: place.clone(),
            found: found.into(),
            limit: String::new(),
            source: String::new(),
            hint: String::new(),
            remedy: None,
        }
    }

    /// The same with what would put it right.
    pub fn hint(mut self, hint: impl Into<String>) -> Self {
        self.hint = hint.into();
        self
    }
}
