//! Electricity and water.

mod box_fill;
mod conduit;
mod cover;
mod drain_fall;
mod drain_trap;
mod electrician;
mod protection;
mod receptacle;
mod receptacle_heat;
mod receptacle_position;
mod receptacle_seat;
mod receptacle_sink;
mod route;

use super::Rule;

/// The rules of this family.
pub(super) static RULES: &[&Rule] = &[
    &receptacle_position::RECEPTACLE_POSITION,
    &receptacle_sink::RECEPTACLE_SINK,
    &receptacle_heat::RECEPTACLE_HEAT,
    &receptacle_seat::RECEPTACLE_SEAT,
    &protection::PROTECTION,
    &cover::COVER,
    &conduit::CONDUIT,
    &box_fill::BOX_FILL,
    &electrician::ELECTRICIAN,
    &drain_fall::DRAIN_FALL,
    &drain_trap::DRAIN_TRAP,
];
