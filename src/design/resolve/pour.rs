//! The pour and the forecast resolved.

use super::gather::Gather;
use crate::design::Pour;
use crate::parameters::{self, Given};

/// What the file says, and what is usual where it is silent.
pub(super) fn pour(_: &mut Gather, given: &Given<parameters::Pour>) -> Pour {
    Pour {
        place: given.place(),
        ..Pour::default()
    }
}
