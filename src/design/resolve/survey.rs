//! The survey resolved.

use super::gather::Gather;
use crate::design::Survey;
use crate::parameters::{self, Given};

/// What was measured; `None` where nothing was.
pub(super) fn survey(_: &mut Gather, given: &Given<parameters::Survey>) -> Option<Survey> {
    let Given::Yes(_, place) = given else {
        return None;
    };
    Some(Survey {
        place: place.clone(),
    })
}
