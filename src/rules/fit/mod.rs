//! Fit: does everything find its place.

mod base_channel;
mod cutout;
mod flange_cover;
mod swept;

use super::Rule;

/// The rules of this family.
pub(super) static RULES: &[&Rule] = &[
    &cutout::CUTOUT,
    &flange_cover::FLANGE_COVER,
    &base_channel::BASE_CHANNEL,
];
