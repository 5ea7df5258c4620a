//! How the frame is set out, and how it stands where it was measured.

use crate::plan::Plan;

/// The frame on the ground.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Standing {}

/// Reckons how the frame is set out and how it stands.
pub fn reckon(_: &Plan) -> Standing {
    Standing {}
}
