//! A sound island on which the tests of the rules try one change at a time.

use super::{Subject, ask, rule};
use crate::design::{self, Change};
use crate::diagnostics::{Finding, Verdict};
use crate::plan::{self, Plan};

/// The island of `tests/cases/sound.yaml` with some keys written otherwise.
#[derive(Clone, Default)]
pub(crate) struct Trial {
    changes: Vec<Change>,
}

impl Trial {
    /// The island as it is: it says everything that a rule may ask, and no rule fails.
    pub(crate) fn sound() -> Self {
        Self::default()
    }

    /// The same island with nothing in the counter and no hole in the faces.
    pub(crate) fn bare() -> Self {
        let keys = ["appliances", "openings", "gas", "electricity"];
        keys.into_iter().fold(Self::sound(), Self::without)
    }

    /// The same with the value of a key replaced or added. The key is as findings spell it, `openings[2].sill`, or with
    /// the entry's name for its number, `openings[gas hatch].sill`; the value is YAML.
    pub(crate) fn with(mut self, key: &str, value: &str) -> Self {
        self.changes.push(Change::write(key, value));
        self
    }

    /// The same with a key left out.
    pub(crate) fn without(mut self, key: &str) -> Self {
        self.changes.push(Change::leave_out(key));
        self
    }

    /// The plan.
    pub(crate) fn plan(&self) -> Plan {
        let text = include_str!("../../tests/cases/sound.yaml");
        let design = design::from_text_changed(text, design::shipped_trade(), &self.changes);
        plan::lay_out(design.unwrap()).unwrap()
    }

    /// The answers of a rule.
    pub(crate) fn answers(&self, code: &str) -> Vec<Finding> {
        let plan = self.plan();
        let found = ask(rule(code).unwrap(), &Subject::new(&plan));
        assert!(!found.is_empty(), "{code} says nothing");
        found
    }

    /// The gravest verdict of a rule.
    pub(crate) fn worst(&self, code: &str) -> Verdict {
        let answers = self.answers(code);
        answers.iter().map(|f| f.verdict).max().unwrap()
    }

    /// The answer of a rule about one subject.
    pub(crate) fn about(&self, code: &str, subject: &str) -> Finding {
        let answers = self.answers(code);
        let found = answers.iter().find(|f| f.subject == subject);
        found.unwrap_or_else(|| panic!("{answers:#?}")).clone()
    }
}
