//! A limit as it holds for one design: the rule's usual value, or the file's own.

use super::Limit;
use crate::design::{Design, OwnLimit};
use crate::diagnostics::{Finding, Place, Verdict};
use crate::units::{Notation, ParseError, Unit};

/// A limit as it holds for one design.
#[derive(Clone, Debug, PartialEq)]
pub struct Bound {
    /// The value in the base unit of `unit`.
    pub value: f64,
    /// Its unit.
    pub unit: Unit,
    /// Where it comes from.
    pub source: String,
    notation: Notation,
}

impl Bound {
    /// The value in words.
    pub fn spell(&self) -> String {
        self.unit.spell(self.value, self.notation)
    }

    /// True when a measure is not above it; a billionth is forgiven.
    pub fn allows(&self, measure: f64) -> bool {
        measure <= self.value + self.value.abs().max(1.0) * 1e-9
    }

    /// True when a measure is not below it; a billionth is forgiven.
    pub fn is_reached_by(&self, measure: f64) -> bool {
        measure >= self.value - self.value.abs().max(1.0) * 1e-9
    }
}

/// The limit as it holds for a design. An own value that cannot be read counts for nothing; [`faults`] says so.
pub(super) fn bound(design: &Design, limit: &Limit) -> Bound {
    let own = design.limits.iter().rfind(|o| o.name.value == limit.name);
    let own = own.and_then(|o| Some((read(limit, &o.value).ok()?, o)));
    let (value, source) = match own {
        Some((value, own)) => (value, source_of(own)),
        None => (limit.usual, limit.source.to_owned()),
    };
    Bound {
        value,
        unit: limit.unit,
        source,
        notation: design.project.units,
    }
}

/// An own value in the base unit. Distances, loads and counts below nothing would make every rule pass.
fn read(limit: &Limit, text: &str) -> Result<f64, ParseError> {
    let value = limit.unit.read(text)?;
    if limit.unit.goes_below_nothing() {
        return Ok(value);
    }
    if value < 0.0 {
        let problem = format!("the limit '{}' is less than nothing", limit.name);
        return Err(ParseError {
            problem,
            hint: "write 0 or more".to_owned(),
        });
    }
    Ok(value.abs())
}

fn source_of(own: &OwnLimit) -> String {
    if own.source.is_empty() {
        "set in the file, without a source".to_owned()
    } else {
        format!("set in the file: {}", own.source)
    }
}

/// What is wrong with the limits of the file: a name that no rule has, a value that cannot be read.
pub(super) fn faults(design: &Design, known: &[&Limit]) -> Vec<Finding> {
    let fault = |code, place: &Place, found: String, hint: String| {
        let mut finding = Finding::error(code, place, found).hint(hint);
        finding.verdict = Verdict::Fail;
        finding
    };
    let one = |own: &OwnLimit| {
        let Some(limit) = known.iter().find(|l| l.name == own.name.value) else {
            let nearest = known
                .iter()
                .min_by_key(|l| strsim::damerau_levenshtein(l.name, &own.name.value));
            let hint = nearest.map_or(String::new(), |l| format!("did you mean '{}'?", l.name));
            let found = format!("no rule has a limit named '{}'", own.name.escape_debug());
            return Some(fault("unknown-limit", &own.name.place, found, hint));
        };
        let error = read(limit, &own.value).err()?;
        Some(fault(
            "bad-limit",
            &own.value.place,
            error.problem,
            error.hint,
        ))
    };
    design.limits.iter().filter_map(one).collect()
}
