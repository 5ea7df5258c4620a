//! The printable scale model.

use super::Placed;
use crate::diagnostics::Place;
use crate::units::Length;

/// What the printer of the scale model can do.
///
/// Invariant: the wall is no thinner than the nozzle.
#[derive(Clone, Debug, PartialEq)]
pub struct Printer {
    /// How far a print may reach from left to right, from front to back, and upwards.
    pub bed: [Placed<Length>; 3],
    /// The bore of the nozzle.
    pub nozzle: Placed<Length>,
    /// The thinnest wall it prints soundly.
    pub wall: Placed<Length>,
    /// The gap on each side between pieces that go into each other.
    pub clearance: Placed<Length>,
}

/// How the printable scale model is made.
#[derive(Clone, Debug, PartialEq)]
pub struct ScaleModel {
    /// How many times smaller than the island it is; `None` for the largest usual scale that fits the bed.
    pub scale: Option<Placed<f64>>,
    /// What it is printed with.
    pub printer: Printer,
    /// Where the file speaks of it.
    pub place: Place,
}
