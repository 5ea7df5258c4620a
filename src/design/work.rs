//! Who works when, and how fast.

use super::Placed;
use crate::diagnostics::Place;
use crate::units::Moment;

/// The crew and its days.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Work {
    /// Its group in the file.
    pub place: Place,
    /// The first day of work, where the file says.
    pub start: Option<Placed<Moment>>,
}
