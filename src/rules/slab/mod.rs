//! Slab: does the counter hold.

mod bracket_span;
mod concrete;
mod inward_corner;
mod joints;
mod lifting;
mod mesh_cover;
mod overhang;
mod overhang_bending;
mod overhang_practice;
mod overhang_shear;
mod placing_time;
mod pour_size;
mod rail_bending;
mod rail_width;
mod rails;
mod weight;

use super::Rule;

/// The rules of this family.
pub(super) static RULES: &[&Rule] = &[
    &overhang_bending::OVERHANG_BENDING,
    &overhang_shear::OVERHANG_SHEAR,
    &overhang_practice::OVERHANG_PRACTICE,
    &bracket_span::BRACKET_SPAN,
    &rail_bending::RAIL_BENDING,
    &rail_width::RAIL_WIDTH,
    &inward_corner::INWARD_CORNER,
    &mesh_cover::MESH_COVER,
    &joints::JOINTS,
    &pour_size::POUR_SIZE,
    &placing_time::PLACING_TIME,
    &weight::WEIGHT,
    &lifting::LIFTING,
];
