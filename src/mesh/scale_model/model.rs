//! What is printed.

use super::Bar;
use crate::geometry::{Faceted, Placement};

/// A layer of the island that is printed by itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Layer {
    /// The steel and the sleepers.
    Frame,
    /// Boards, coats and tile as one skin.
    Base,
    /// The slab.
    Counter,
}

impl Layer {
    /// All layers from the ground up.
    pub const ALL: [Self; 3] = [Self::Frame, Self::Base, Self::Counter];

    /// Its name in file names.
    pub fn name(self) -> &'static str {
        match self {
            Self::Counter => "counter",
            Self::Base => "base",
            Self::Frame => "frame",
        }
    }
}

/// One print.
///
/// Invariant: the surface is closed round one body, lies on z = 0 with its lowest corner at x = 0, y = 0, and fits the bed.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// Its name, such as `base-2`: the name of its file.
    pub name: String,
    /// What it is of.
    pub layer: Layer,
    /// As it is printed, millimetres of the print.
    pub surface: Faceted,
    /// From where it is printed to where it belongs in the model, millimetres of the print: the model stands on z = 0.
    pub back: Placement,
    /// Marks of the members in it, in order; a member that is cut by a joint is in both pieces.
    pub members: Vec<String>,
    /// Area that the printer lays over air, mm²: undersides flatter than 45 degrees that are not on the bed.
    pub over_air: f64,
    /// The thinnest wall measured, millimetres.
    pub thinnest: f64,
}

/// What is printed at once.
#[derive(Clone, Debug, PartialEq)]
pub struct Plate {
    /// Numbers of the pieces, and the motion from each piece's own coordinates to the bed's: x and y from its front left corner.
    pub pieces: Vec<(usize, Placement)>,
}

/// The island as small prints.
#[derive(Clone, Debug, PartialEq)]
pub struct ScaleModel {
    /// How many times smaller than the island.
    pub scale: f64,
    /// How far a print may reach along x, y and z, millimetres.
    pub bed: [f64; 3],
    /// The bore of the nozzle, millimetres.
    pub nozzle: f64,
    /// The thinnest wall, millimetres.
    pub wall: f64,
    /// The gap on each side between pieces that go into each other, millimetres.
    pub clearance: f64,
    /// The pieces from the ground up: frame, base, counter.
    pub pieces: Vec<Piece>,
    /// What is printed at once.
    pub plates: Vec<Plate>,
    /// The members of the frame as they are printed, in the model's place.
    pub bars: Vec<Bar>,
    /// True when the frame goes into the base.
    pub frame_inside: bool,
    /// What was made simpler than it is, one sentence each.
    pub simplified: Vec<String>,
}
