//! Corners between clad faces.

use crate::plan::{Corner, Plan};
use crate::units::Length;

/// True when a face begins at such a corner and both it and the face before it are clad.
pub(super) fn begins_at(plan: &Plan, face: usize, corner: Corner) -> bool {
    let faces = &plan.faces;
    let before = &faces[(face + faces.len() - 1) % faces.len()];
    faces[face].corner == corner && !faces[face].wall && !before.wall
}

/// How high a clad corner is: foot to top of the frame.
pub(super) fn height(plan: &Plan) -> Length {
    Length::millimetres(plan.levels.frame_top - plan.levels.frame_bottom)
}
