//! The error type of the cursor, and the log of findings.

use crate::diagnostics::{Finding, Place};
use std::cell::RefCell;
use std::fmt::Display;

/// Why a value could not be read.
#[derive(Debug)]
pub(super) enum Fault {
    /// Its finding is in the log.
    Reported,
    /// What is wrong, not yet in the log: the problem, and after `; ` what would put it right.
    Said(String),
}

impl Display for Fault {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Reported => f.write_str("reported"),
            Self::Said(text) => f.write_str(text),
        }
    }
}

impl std::error::Error for Fault {}

impl serde::de::Error for Fault {
    fn custom<T: Display>(message: T) -> Self {
        Self::Said(message.to_string())
    }
}

/// The findings of one reading, in the order of the file.
#[derive(Default)]
pub(super) struct Log(RefCell<Vec<Finding>>);

/// Beyond this many findings nobody reads on.
const MOST: usize = 200;

impl Log {
    /// Puts a finding down.
    pub(super) fn put(&self, finding: Finding) {
        let mut findings = self.0.borrow_mut();
        if findings.len() < MOST {
            findings.push(finding);
        } else if findings.len() == MOST {
            let found = format!("there are more than {MOST} errors; the others are not shown");
            findings.push(Finding::error("too-many-errors", &finding.place, found));
        }
    }

    /// Puts down what a visitor said about a value, once.
    pub(super) fn settle<T>(&self, place: &Place, result: Result<T, Fault>) -> Result<T, Fault> {
        result.map_err(|fault| {
            if let Fault::Said(text) = fault {
                let (found, hint) = text.split_once("; ").unwrap_or((&text, ""));
                self.put(Finding::error("bad-value", place, found).hint(hint));
            }
            Fault::Reported
        })
    }

    /// All of them.
    pub(super) fn into_findings(self) -> Vec<Finding> {
        self.0.into_inner()
    }
}
