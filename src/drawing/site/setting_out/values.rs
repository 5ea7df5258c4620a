//! What the sheets of setting out show, as plain values.

use crate::geometry::{Point2, Vector2};
use crate::table::Table;

/// What the sheets show; lengths in millimetres, points in the world.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SettingOut {
    /// The corner points.
    pub pegs: Vec<Peg>,
    /// The corners of the frame in order, by their numbers among the pegs.
    pub outline: Vec<usize>,
    /// What is taped between them.
    pub stretches: Vec<Stretch>,
    /// A right angle at each corner of the frame.
    pub triangles: Vec<Triangle>,
    /// How far strings run past the corners.
    pub past: f64,
    /// The tables beside the figure.
    pub tables: Vec<Table>,
    /// The frame as measured, where it was.
    pub measured: Option<MeasuredFrame>,
}

/// A corner point.
#[derive(Clone, Debug, PartialEq)]
pub struct Peg {
    /// Its letter.
    pub letter: String,
    /// Where it is.
    pub at: Point2,
}

/// A length between two pegs.
#[derive(Clone, Debug, PartialEq)]
pub struct Stretch {
    /// The numbers of the pegs.
    pub ends: [usize; 2],
    /// What it is.
    pub of: StretchOf,
    /// How long, in words.
    pub words: String,
    /// What stands behind it where there is room; may be empty.
    pub name: String,
}

/// What a length between two pegs is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StretchOf {
    /// A side of the whole frame.
    Side,
    /// A side of a run that is not, where runs meet.
    Within,
    /// A diagonal of a run.
    Diagonal,
    /// Across the whole island.
    Overall,
}

/// A right angle by 3, 4 and 5.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Triangle {
    /// Number of the peg at its corner.
    pub corner: usize,
    /// Its two marks.
    pub marks: [Point2; 2],
}

/// The frame as measured.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct MeasuredFrame {
    /// The runs that have a shape.
    pub runs: Vec<MeasuredRun>,
    /// What is to be said over the figure, a sentence each.
    pub notes: Vec<String>,
    /// The tables beside it.
    pub tables: Vec<Table>,
}

/// A run as measured.
#[derive(Clone, Debug, PartialEq)]
pub struct MeasuredRun {
    /// Its corners as planned, counter-clockwise from the working side's left one.
    pub planned: [Point2; 4],
    /// The same as measured.
    pub built: [Point2; 4],
    /// The letters of its corners.
    pub letters: [String; 4],
    /// What is lettered at the middle of each side, from that corner to the next.
    pub sides: [String; 4],
    /// The corner to push.
    pub push: Option<PushArrow>,
}

/// A corner to push.
#[derive(Clone, Debug, PartialEq)]
pub struct PushArrow {
    /// Number of the corner.
    pub corner: usize,
    /// Where to, a unit vector.
    pub towards: Vector2,
    /// How far, in words.
    pub words: String,
}
