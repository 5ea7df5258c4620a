//! Amounts of buying and supplies: a bad one is named and left out, and the rest is still reckoned.

use super::gather::{Gather, Limits, last_key};
use crate::design::Placed;
use crate::diagnostics::{Finding, Place, Verdict};
use crate::parameters::{Dimension, Given};
use crate::units::{Length, ParseError};

/// The least and the most that mean anything, and how that is said.
pub(super) struct Range {
    pub(super) least: f64,
    pub(super) most: f64,
    pub(super) said: &'static str,
}

/// Shares of spare and tax.
pub(super) const SHARE: Range = Range {
    least: 0.0,
    most: 1.0,
    said: "0 % to 100 %",
};

/// What a bag, a can or a mixer holds or covers: anything but nothing.
pub(super) const SOME: Range = Range {
    least: f64::MIN_POSITIVE,
    most: f64::INFINITY,
    said: "more than nothing",
};

impl Gather {
    /// Puts down that something does not hold.
    pub(super) fn fail(
        &mut self,
        code: &'static str,
        place: &Place,
        found: impl Into<String>,
        hint: impl Into<String>,
    ) {
        let mut finding = Finding::error(code, place, found).hint(hint);
        finding.verdict = Verdict::Fail;
        self.findings.push(finding);
    }

    /// The value of a text; `None` when it is not there or cannot be read, which is put down.
    pub(super) fn written<T>(
        &mut self,
        given: &Given<impl AsRef<str>>,
        read: impl Fn(&str) -> Result<T, ParseError>,
    ) -> Option<Placed<T>> {
        let place = given.place();
        match read(given.value()?.as_ref()) {
            Ok(value) => Some(Placed { value, place }),
            Err(error) => {
                self.fail("bad-amount", &place, error.problem, error.hint);
                None
            }
        }
    }

    /// The same for an amount with limits.
    pub(super) fn amount(
        &mut self,
        given: &Given<impl AsRef<str>>,
        range: &Range,
        read: impl Fn(&str) -> Result<f64, ParseError>,
    ) -> Option<Placed<f64>> {
        let amount = self.written(given, read)?;
        let (value, place) = (amount.value, &amount.place);
        if value >= range.least && value <= range.most {
            return Some(amount);
        }
        let sense = if value < 0.0 {
            "is less than nothing"
        } else if value == 0.0 {
            "is nothing"
        } else if value < range.least {
            "is too small"
        } else {
            "is too large"
        };
        let text = given.value().map_or("", |t| t.as_ref()).trim();
        let found = format!("{} {sense}: {text}", last_key(&place.key));
        let hint = format!("write {}", range.said);
        self.fail("out-of-range", place, found, hint);
        None
    }

    /// A length with limits that is left out when it is bad.
    pub(super) fn soft_length(
        &mut self,
        given: &Given<Dimension>,
        limits: Limits,
    ) -> Option<Length> {
        let Given::Yes(Dimension(length), place) = given else {
            return None;
        };
        let holds = self.within(*length, limits, place);
        if !holds && let Some(finding) = self.findings.last_mut() {
            finding.verdict = Verdict::Fail;
        }
        holds.then_some(*length)
    }

    /// Puts down that a key is missing without which its entry is left out; true when it is there.
    pub(super) fn is_there<T>(&mut self, given: &Given<T>, parent: &Place, key: &str) -> bool {
        let before = self.findings.len();
        self.needed(given, parent, key);
        for finding in &mut self.findings[before..] {
            finding.verdict = Verdict::Fail;
        }
        !given.is_absent()
    }
}

/// Reads a whole number.
pub(super) fn count(text: &str) -> Result<f64, ParseError> {
    let text = text.trim();
    let digits = text.strip_prefix('-').unwrap_or(text);
    let whole =
        !digits.is_empty() && digits.len() <= 9 && digits.bytes().all(|b| b.is_ascii_digit());
    whole
        .then(|| text.parse().ok())
        .flatten()
        .ok_or_else(|| ParseError {
            problem: format!("'{}' is not a whole number", text.escape_debug()),
            hint: "write figures alone, such as 100".to_owned(),
        })
}
