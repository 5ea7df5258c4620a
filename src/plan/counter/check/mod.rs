//! What a counter cannot be, and where the file says so.

mod edge;
mod fault;
mod notch;
mod outline;
mod rail;

pub(super) use edge::{corners, profile, turndown};
pub(super) use fault::fault;
pub(super) use notch::notches;
pub(super) use outline::crossings;
pub(super) use rail::rails;

use crate::design::Design;
use crate::units::Length;

/// The least strip of slab left beside a cutout, millimetres: 1 in, common practice, without source.
const LEAST_RAIL: f64 = 25.4;

fn spell(design: &Design, mm: f64) -> String {
    design
        .project
        .units
        .spell_with_unit(Length::millimetres(mm))
}
