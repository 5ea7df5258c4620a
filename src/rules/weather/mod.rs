//! Weather and coats.

mod base_gap;
mod coat_joints;
mod coat_thickness;
mod cold_concrete;
mod drip;
mod evaporation;
mod freezing;
mod hot_concrete;
mod pouring;
mod slab_fall;
mod tile_joints;
mod tile_size;

pub(super) use pouring::{Pouring, celsius, hours_of, pouring};

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
    &evaporation::EVAPORATION,
    &hot_concrete::HOT_CONCRETE,
    &cold_concrete::COLD_CONCRETE,
];
