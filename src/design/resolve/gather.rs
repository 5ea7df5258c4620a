//! Gathering values: the usual one where the file is silent, a finding where it makes no sense.

use crate::design::Placed;
use crate::diagnostics::{Finding, Place};
use crate::parameters::{Dimension, Given};
use crate::units::{Length, Notation};

/// What is built where the file is silent: inches for an imperial file, millimetres for a metric one.
#[derive(Clone, Copy)]
pub(super) struct Usual(pub(super) f64, pub(super) f64);

/// The least and the most millimetres that mean anything for one key.
#[derive(Clone, Copy)]
pub(super) struct Limits(pub(super) f64, pub(super) f64);

/// The findings so far, and how lengths are spelt.
pub(super) struct Gather {
    pub(super) findings: Vec<Finding>,
    pub(super) notation: Notation,
}

impl Gather {
    pub(super) fn new(notation: Notation) -> Self {
        Self {
            findings: Vec::new(),
            notation,
        }
    }

    /// Puts an error down.
    pub(super) fn error(
        &mut self,
        code: &'static str,
        place: &Place,
        found: impl Into<String>,
        hint: impl Into<String>,
    ) {
        self.findings
            .push(Finding::error(code, place, found).hint(hint));
    }

    /// The usual length in the file's own units.
    pub(super) fn usual(&self, usual: Usual) -> Length {
        match self.notation {
            Notation::Imperial => Length::inches(usual.0),
            Notation::Metric => Length::millimetres(usual.1),
        }
    }

    /// A length spelt for a message.
    pub(super) fn spell(&self, length: Length) -> String {
        self.notation.spell_with_unit(length)
    }

    /// A length that may be left out.
    pub(super) fn length(
        &mut self,
        given: &Given<Dimension>,
        usual: Usual,
        limits: Limits,
    ) -> Placed<Length> {
        let usual = self.usual(usual);
        self.length_or(given, usual, limits)
    }

    /// The same with a usual value that follows from others.
    pub(super) fn length_or(
        &mut self,
        given: &Given<Dimension>,
        usual: Length,
        limits: Limits,
    ) -> Placed<Length> {
        let Given::Yes(Dimension(length), place) = given else {
            return Placed {
                value: usual,
                place: given.place(),
            };
        };
        let value = if self.within(*length, limits, place) {
            *length
        } else {
            usual
        };
        Placed {
            value,
            place: place.clone(),
        }
    }

    /// A length that must be there; `None` when it is not, or makes no sense: the finding is put down.
    pub(super) fn needed_length(
        &mut self,
        given: &Given<Dimension>,
        parent: &Place,
        key: &str,
        limits: Limits,
    ) -> Option<Placed<Length>> {
        let Dimension(length) = *self.needed(given, parent, key)?;
        let place = given.place();
        self.within(length, limits, &place).then_some(Placed {
            value: length,
            place,
        })
    }

    /// A value that must be there; `None` when it is not: the finding is put down.
    pub(super) fn needed<'g, T>(
        &mut self,
        given: &'g Given<T>,
        parent: &Place,
        key: &str,
    ) -> Option<&'g T> {
        if given.is_absent() {
            let place = Place {
                key: if parent.key.is_empty() {
                    key.to_owned()
                } else {
                    format!("{}.{key}", parent.key)
                },
                ..parent.clone()
            };
            let hint = format!("write '{key}:' and its value here");
            self.error(
                "missing-key",
                &place,
                format!("the key '{key}' is missing"),
                hint,
            );
        }
        given.value()
    }

    /// Puts a length out of its limits down; true when it is within.
    pub(super) fn within(&mut self, length: Length, limits: Limits, place: &Place) -> bool {
        let (least, most) = (Length::millimetres(limits.0), Length::millimetres(limits.1));
        if length >= least && length <= most {
            return true;
        }
        let key = last_key(&place.key);
        let sense = if length < Length::ZERO {
            "is less than nothing"
        } else if length < least {
            "is too small"
        } else {
            "is too large"
        };
        let found = format!("{key} {sense}: {}", self.spell(length));
        let limit = format!("{} to {}", self.spell(least), self.spell(most));
        let mut finding =
            Finding::error("out-of-range", place, found).hint("check the number and its unit");
        finding.limit = limit;
        self.findings.push(finding);
        false
    }

    /// A text of one line that may be left out.
    pub(super) fn text(&mut self, given: &Given<String>, usual: &str) -> String {
        match given {
            Given::Yes(text, place) if self.is_plain(text, place, 120) => text.trim().to_owned(),
            _ => usual.to_owned(),
        }
    }

    /// True when a text can stand on a drawing: one line, nothing invisible in it, not too long.
    pub(super) fn is_plain(&mut self, text: &str, place: &Place, most: usize) -> bool {
        let key = last_key(&place.key);
        if let Some(bad) = text.trim().chars().find(|c| is_invisible(*c)) {
            let found = format!("{key} holds the control character U+{:04X}", bad as u32);
            let hint = "write it as plain text on one line";
            self.error("control-character", place, found, hint);
            return false;
        }
        let count = text.trim().chars().count();
        if count > most {
            let found = format!("{key} is {count} characters long");
            let hint = format!("the drawings have room for {most}");
            self.error("long-text", place, found, hint);
            return false;
        }
        true
    }
}

/// The last word of a key such as `runs[1].length`.
pub(super) fn last_key(key: &str) -> &str {
    key.rsplit('.').next().unwrap_or(key)
}

/// Control characters, and marks that turn or hide text.
fn is_invisible(c: char) -> bool {
    c.is_control()
        || matches!(c, '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}' | '\u{2060}'..='\u{206f}' | '\u{feff}')
}
