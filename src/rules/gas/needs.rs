//! What air a room needs, asked one by one and held against what it has.

use super::vents::Between;
use crate::diagnostics::Verdict;

/// A margin below this share is doubtful: the free area of a louvre is known no better.
const NARROW: f64 = 1.1;

/// One thing that a room needs.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Need {
    /// What it is, such as `two openings at the floor, on opposite sides, each`.
    pub(super) what: &'static str,
    /// The free area it has, square millimetres.
    pub(super) has: Between,
    /// The free area it needs.
    pub(super) asked: f64,
}

impl Need {
    /// How it turns out: what cannot be told for want of a free area is not checked.
    pub(super) fn verdict(&self) -> Verdict {
        let close = 1.0 - 1e-9;
        if self.has.most < self.asked * close {
            Verdict::Fail
        } else if self.has.least < self.asked * close {
            Verdict::NotChecked
        } else if self.has.least < self.asked * NARROW * close {
            Verdict::Caution
        } else {
            Verdict::Pass
        }
    }
}
