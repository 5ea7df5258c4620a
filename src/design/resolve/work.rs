//! The order of work resolved.

use super::gather::Gather;
use crate::design::Work;
use crate::parameters::{self, Given};

/// What the file says, and what is usual where it is silent.
pub(super) fn work(_: &mut Gather, given: &Given<parameters::Work>) -> Work {
    Work {
        place: given.place(),
        ..Work::default()
    }
}
