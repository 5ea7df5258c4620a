//! Values that only the checks read: a bad one is named and left out, and everything else goes on.

use super::amounts::{Range, count};
use super::gather::{Gather, Limits};
use crate::design::{Placed, Run};
use crate::diagnostics::Place;
use crate::parameters::{CountText, Dimension, Given, nearest};
use crate::units::Length;

/// A name and its place.
pub(super) type Named = Placed<String>;

impl Gather {
    /// A length with limits.
    pub(super) fn optional_length(
        &mut self,
        given: &Given<Dimension>,
        limits: Limits,
    ) -> Option<Placed<Length>> {
        let value = self.soft_length(given, limits)?;
        Some(Placed {
            value,
            place: given.place(),
        })
    }

    /// A length without which its entry is left out.
    pub(super) fn entry_length(
        &mut self,
        given: &Given<Dimension>,
        parent: &Place,
        key: &str,
        limits: Limits,
    ) -> Option<Placed<Length>> {
        self.is_there(given, parent, key);
        self.optional_length(given, limits)
    }

    /// A whole number with limits.
    pub(super) fn whole(&mut self, given: &Given<CountText>, range: &Range) -> Option<Placed<u32>> {
        let amount = self.amount(given, range, count)?;
        Some(Placed {
            value: amount.value as u32,
            place: amount.place,
        })
    }

    /// A word without which its entry is left out.
    pub(super) fn entry_word<T: Copy, U>(
        &mut self,
        given: &Given<T>,
        parent: &Place,
        key: &str,
        meaning: impl Fn(T) -> U,
    ) -> Option<Placed<U>> {
        self.is_there(given, parent, key);
        word(given, meaning)
    }

    /// A name without which its entry is left out; it must not be among `earlier`.
    pub(super) fn entry_name<'n>(
        &mut self,
        given: &Given<String>,
        parent: &Place,
        earlier: impl Iterator<Item = &'n str>,
    ) -> Option<String> {
        if !self.is_there(given, parent, "name") {
            return None;
        }
        let (name, place) = (given.value()?.trim().to_owned(), given.place());
        if name.is_empty() {
            self.fail(
                "empty-text",
                &place,
                "the name is empty",
                "give it a short name",
            );
            return None;
        }
        if !self.is_soft_plain(&name, &place) {
            return None;
        }
        let mut earlier = earlier;
        if earlier.any(|e| e == name) {
            let found = format!("'{name}' is there twice");
            self.fail("same-name", &place, found, "rename one of them");
            return None;
        }
        Some(name)
    }

    /// A text of one line; one that is none is named and left out.
    pub(super) fn soft_text(&mut self, given: &Given<String>) -> String {
        let Given::Yes(text, place) = given else {
            return String::new();
        };
        if self.is_soft_plain(text, place) {
            text.trim().to_owned()
        } else {
            String::new()
        }
    }

    /// True when a text can stand in a message.
    fn is_soft_plain(&mut self, text: &str, place: &Place) -> bool {
        let before = self.findings.len();
        let plain = self.is_plain(text, place, 120);
        for finding in &mut self.findings[before..] {
            finding.verdict = crate::diagnostics::Verdict::Fail;
        }
        plain
    }

    /// The number of what a name names; a name that is not known is named with the nearest one.
    pub(super) fn reference<'n>(
        &mut self,
        given: &Given<String>,
        what: &str,
        names: impl Iterator<Item = &'n str> + Clone,
    ) -> Option<Placed<usize>> {
        let (Given::Yes(wanted, place), mut all) = (given, names.clone()) else {
            return None;
        };
        if let Some(value) = all.position(|n| n == wanted.trim()) {
            let place = place.clone();
            return Some(Placed { value, place });
        }
        let list: Vec<_> = names.clone().collect();
        let hint = match nearest(wanted, names) {
            Some(name) => format!("did you mean '{name}'?"),
            None if list.is_empty() => format!("there is no {what} in the file"),
            None => format!("there are {}", list.join(", ")),
        };
        let found = format!("there is no {what} named '{}'", wanted.escape_debug());
        self.fail("unknown-name", place, found, hint);
        None
    }

    /// The number of a run by its name; the only run where the name is left out.
    pub(super) fn run_of(
        &mut self,
        given: &Given<String>,
        parent: &Place,
        runs: &[Run],
    ) -> Option<usize> {
        if given.is_absent() && runs.len() == 1 {
            return Some(0);
        }
        self.is_there(given, parent, "run");
        let names = runs.iter().map(|r| r.name.value.as_str());
        self.reference(given, "run", names).map(|r| r.value)
    }
}

/// What a word means.
pub(super) fn word<T: Copy, U>(given: &Given<T>, meaning: impl Fn(T) -> U) -> Option<Placed<U>> {
    let value = meaning(*given.value()?);
    Some(Placed {
        value,
        place: given.place(),
    })
}

/// A yes or no.
pub(super) fn flag(given: &Given<bool>) -> Option<Placed<bool>> {
    word(given, |b| b)
}
