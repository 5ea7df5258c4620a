//! Fit: does everything find its place.

mod base_channel;
mod board_strip;
mod cutout;
mod door_swing;
mod drawer_travel;
mod flange_cover;
mod flange_room;
mod opens;
mod site_object;
mod strip;
mod swept;
mod tile_border;
mod under_body;
mod undercounter;
mod valve_access;

use super::Rule;

/// The rules of this family.
pub(super) static RULES: &[&Rule] = &[
    &cutout::CUTOUT,
    &flange_cover::FLANGE_COVER,
    &flange_room::FLANGE_ROOM,
    &under_body::UNDER_BODY,
    &undercounter::UNDERCOUNTER,
    &door_swing::DOOR_SWING,
    &drawer_travel::DRAWER_TRAVEL,
    &valve_access::VALVE_ACCESS,
    &base_channel::BASE_CHANNEL,
    &tile_border::TILE_BORDER,
    &board_strip::BOARD_STRIP,
    &site_object::SITE_OBJECT,
];
