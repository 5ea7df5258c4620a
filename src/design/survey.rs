//! The ground as it was measured.

use super::Placed;
use crate::diagnostics::Place;
use crate::geometry::Point3;
use crate::units::Length;

/// The survey of the ground.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Survey {
    /// Its group in the file.
    pub place: Place,
    /// The levels, each at a place of its own: points in the order of the file, then the grid row by row.
    pub levels: Vec<SpotLevel>,
    /// How finely they were read.
    pub reading: Length,
    /// Ground farther than this from every level is sparsely measured.
    pub sparse_beyond: Length,
    /// Thicknesses of the shims at hand, the thinnest first, none twice; at least one.
    pub shims: Vec<Length>,
    /// The highest pack that is allowed; its place is unknown where the file leaves the usual one.
    pub most_packing: Placed<Length>,
}

/// One spot level.
#[derive(Clone, Debug, PartialEq)]
pub struct SpotLevel {
    /// Its name: `P3` is the third point of the list, `R2-5` the fifth of the grid's second row.
    pub name: String,
    /// Where it was taken, in the world, and its height, upwards from the survey's own zero, millimetres.
    pub at: Point3,
    /// Its entry in the file.
    pub place: Place,
}
