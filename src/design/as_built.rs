//! The frame as it stands.

use crate::diagnostics::Place;

/// What was measured after framing. Nothing where the file does not say.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct AsBuilt {
    /// Its group in the file.
    pub place: Place,
}
