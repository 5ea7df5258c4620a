//! The frame as measured, resolved.

use super::gather::Gather;
use crate::design::AsBuilt;
use crate::parameters::{self, Given};

/// What was measured; `None` where nothing was.
pub(super) fn as_built(_: &mut Gather, given: &Given<parameters::AsBuilt>) -> Option<AsBuilt> {
    let Given::Yes(_, place) = given else {
        return None;
    };
    Some(AsBuilt {
        place: place.clone(),
    })
}
