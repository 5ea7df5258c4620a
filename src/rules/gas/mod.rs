//! Heat and gas.

mod airing;
mod and_electricity;
mod clearance;
mod cylinder;
mod cylinder_enclosure;
mod enclosure;
mod heat_clearance;
mod heat_inside;
mod heat_overhead;
mod hot;
mod needs;
mod pipe_size;
pub mod piping;
mod pressure_drop;
mod shut_off;
mod sleeve;
mod spaces;
mod supply;
mod ventilation;
mod vents;

use super::Rule;

/// The rules of this family.
pub(super) static RULES: &[&Rule] = &[
    &heat_clearance::HEAT_CLEARANCE,
    &heat_overhead::HEAT_OVERHEAD,
    &heat_inside::HEAT_INSIDE,
    &ventilation::VENTILATION,
    &cylinder_enclosure::CYLINDER_ENCLOSURE,
    &cylinder::CYLINDER,
    &pipe_size::PIPE_SIZE,
    &pressure_drop::PRESSURE_DROP,
    &shut_off::SHUT_OFF,
    &sleeve::SLEEVE,
    &and_electricity::AND_ELECTRICITY,
];
