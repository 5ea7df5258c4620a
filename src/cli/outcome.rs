//! How a command ended.

use crate::diagnostics::{Finding, Verdict};

/// How a command ended; the exit code follows from it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Outcome {
    /// Clean, or cautions only.
    Done,
    /// At least one check fails.
    Fails,
    /// The input could not be used, or the program could not do its work.
    Unusable,
}

impl Outcome {
    /// The exit code.
    pub(super) fn code(self) -> u8 {
        match self {
            Self::Done => 0,
            Self::Fails => 1,
            Self::Unusable => 2,
        }
    }

    /// What a list of findings comes to.
    pub(super) fn of(findings: &[Finding]) -> Self {
        match findings.iter().map(|f| f.verdict).max() {
            Some(Verdict::Error) => Self::Unusable,
            Some(Verdict::Fail) => Self::Fails,
            _ => Self::Done,
        }
    }
}

/// Why a command could not do its work: one sentence, and what would put it right.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Trouble {
    /// What went wrong.
    pub(super) what: String,
    /// What would put it right; may be empty.
    pub(super) hint: String,
}

impl Trouble {
    pub(super) fn new(what: impl Into<String>, hint: impl Into<String>) -> Self {
        Self {
            what: what.into(),
            hint: hint.into(),
        }
    }
}
