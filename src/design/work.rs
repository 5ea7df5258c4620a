//! Who works when, and how fast.

use super::Placed;
use crate::diagnostics::Place;
use crate::units::{Moment, TimeSpan};

/// The days of a week, Monday first, and the hours of a day.
#[derive(Clone, Debug, PartialEq)]
pub struct Shift {
    /// True for the days that are worked.
    pub days: [bool; 7],
    /// Minutes after midnight when work begins.
    pub from: i64,
    /// Minutes after midnight when it ends.
    ///
    /// Invariant: after `from`, at most 24 hours.
    pub to: i64,
}

/// A step that must be done before another.
#[derive(Clone, Debug, PartialEq)]
pub struct Earlier {
    /// Its name.
    pub step: &'static str,
    /// What must pass in between, where the file says.
    pub wait: Option<TimeSpan>,
}

/// One step otherwise than is usual.
#[derive(Clone, Debug, PartialEq)]
pub struct StepChange {
    /// Its name.
    pub step: &'static str,
    /// Its entry in the file.
    pub place: Place,
    /// How many hours of work it takes.
    pub takes: Option<Placed<TimeSpan>>,
    /// How many pairs of hands it needs.
    pub hands: Option<Placed<u32>>,
    /// What must be done before it.
    ///
    /// Invariant: together with the usual order there is no circle.
    pub after: Option<Placed<Vec<Earlier>>>,
}

/// The crew and its days.
#[derive(Clone, Debug, PartialEq)]
pub struct Work {
    /// Its group in the file.
    pub place: Place,
    /// True when the file has the group.
    pub is_asked: bool,
    /// The first day of work, where the file says.
    pub start: Option<Placed<Moment>>,
    /// The day by which all should be done.
    pub done_by: Option<Placed<Moment>>,
    /// When the crew works.
    pub own: Shift,
    /// When licensed trades come.
    pub trades: Shift,
    /// Days on which nobody works: their midnights, in order.
    pub off: Vec<Moment>,
    /// How many pairs of hands there are; at least one.
    pub crew: Placed<u32>,
    /// How fast they are; more than nothing.
    pub pace: Placed<f64>,
    /// What the file says of single steps, each step once.
    pub steps: Vec<StepChange>,
}

/// Monday to Friday.
const WEEK: [bool; 7] = [true, true, true, true, true, false, false];

impl Shift {
    /// When the crew works where the file is silent: an invented default.
    pub const CREW: Self = Self {
        days: WEEK,
        from: 8 * 60,
        to: 17 * 60,
    };
    /// When licensed trades come where the file is silent: an invented default.
    pub const TRADES: Self = Self {
        days: WEEK,
        from: 8 * 60,
        to: 16 * 60,
    };
}

impl Default for Work {
    fn default() -> Self {
        Self {
            place: Place::default(),
            is_asked: false,
            start: None,
            done_by: None,
            own: Shift::CREW,
            trades: Shift::TRADES,
            off: Vec::new(),
            crew: Placed {
                value: 2,
                place: Place::default(),
            },
            pace: Placed {
                value: 1.0,
                place: Place::default(),
            },
            steps: Vec::new(),
        }
    }
}
