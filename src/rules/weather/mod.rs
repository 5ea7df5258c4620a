//! Weather and coats.

mod base_gap;
mod coat_joints;
mod coat_thickness;
mod drip;
mod freezing;
mod slab_fall;
mod tile_joints;
mod tile_size;

use super::Rule;

/// The rules of this family.
pub(super) static RULES: &[&Rule] = &[
    &coat_thickness::COAT_THICKNESS,
    &coat_joints::COAT_JOINTS,
    &tile_joints::TILE_JOINTS,
    &tile_size::TILE_SIZE,
    &freezing::FREEZING,
    &slab_fall::SLAB_FALL,
    &drip::DRIP,
    &base_gap::BASE_GAP,
];
