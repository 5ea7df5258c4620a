//! The prints of a scale model, as far as they are drawn.

use crate::geometry::{Bounds3, Faceted, Placement};

/// A layer of the model, from the ground up: the order in which it goes together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Level {
    /// The members.
    Frame,
    /// The clad base.
    Base,
    /// The slab.
    Counter,
}

impl Level {
    /// All levels from the ground up.
    pub const ALL: [Self; 3] = [Self::Frame, Self::Base, Self::Counter];

    /// Its name in lists.
    pub fn name(self) -> &'static str {
        match self {
            Self::Frame => "frame",
            Self::Base => "base",
            Self::Counter => "counter",
        }
    }
}

/// One print.
#[derive(Clone, Debug, PartialEq)]
pub struct Print<'a> {
    /// The stem of its file's name, such as `base-2`.
    pub name: &'a str,
    /// What it is of.
    pub level: Level,
    /// As it is printed, millimetres of the print.
    pub surface: &'a Faceted,
    /// From where it is printed to where it belongs in the model, millimetres of the print.
    pub back: Placement,
    /// How many members of the frame are in it.
    pub members: usize,
}

/// All prints of a model.
#[derive(Clone, Debug, PartialEq)]
pub struct Prints<'a> {
    /// How many times smaller than the island the model is.
    pub scale: f64,
    /// How far a print may reach along x, y and z, millimetres.
    pub bed: [f64; 3],
    /// The gap on each side between pieces that go into each other, millimetres.
    pub clearance: f64,
    /// True when the frame goes into the base.
    pub frame_inside: bool,
    /// The prints, from the ground up.
    pub pieces: Vec<Print<'a>>,
    /// For each bed the numbers of the pieces on it, and the motion from each one's own coordinates to the bed's.
    pub plates: Vec<Vec<(usize, Placement)>>,
    /// What was made simpler than it is, a sentence each.
    pub simplified: &'a [String],
}

impl Prints<'_> {
    /// The scale as it is spelt, such as `1:12`.
    pub fn scale_name(&self) -> String {
        let whole = self.scale.round();
        if (self.scale - whole).abs() < 1e-9 {
            format!("1:{whole}")
        } else {
            format!("1:{:.2}", self.scale)
        }
    }

    /// The bed on which a piece lies, counted from 1.
    pub(super) fn bed_of(&self, piece: usize) -> Option<usize> {
        let on = |plate: &Vec<(usize, Placement)>| plate.iter().any(|(i, _)| *i == piece);
        self.plates.iter().position(on).map(|i| i + 1)
    }
}

impl Print<'_> {
    /// Its corners enlarged to the island's size and in the island's place, before they are moved: the box round them.
    pub(super) fn built(&self, scale: f64) -> Option<Bounds3> {
        let points = self.surface.points.iter();
        Bounds3::around(points.map(|p| (self.back * p) * scale))
    }
}
