//! The ground as it was measured.

use crate::diagnostics::Place;

/// The survey of the ground.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Survey {
    /// Its group in the file.
    pub place: Place,
}
