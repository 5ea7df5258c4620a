//! Fit: does everything find its place.

mod base_channel;
mod cutout;
mod door_swing;
mod drawer_travel;
mod flange_cover;
mod opens;
mod swept;
mod valve_access;

use super::Rule;

/// The rules of this family.
pub(super) static RULES: &[&Rule] = &[
    &cutout::CUTOUT,
    &flange_cover::FLANGE_COVER,
    &door_swing::DOOR_SWING,
    &drawer_travel::DRAWER_TRAVEL,
    &valve_access::VALVE_ACCESS,
    &base_channel::BASE_CHANNEL,
];
