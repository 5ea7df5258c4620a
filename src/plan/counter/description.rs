//! What is known of the counter once it is laid out.

use crate::geometry::{Outline, Point2, Region, Slab, Vertex};

/// The thickness of the sheet that edge forms are made of, millimetres: 3/4 in plywood, common practice.
pub const FORM_THICKNESS: f64 = 19.05;

/// The counter laid out, in world coordinates, millimetres.
///
/// Invariant: `sides[i]` is the side `i` of `slab`, counter-clockwise; the slab's own z = 0 is its underside.
#[derive(Clone, Debug, PartialEq)]
pub struct CounterPlan {
    /// The outermost line, notches and eased corners included.
    pub outline: Outline,
    /// The sides in counter-clockwise order; a face that a notch breaks has several.
    pub sides: Vec<CounterSide>,
    /// The inner line of the turndown, one for each unbroken stretch; empty without a turndown.
    pub turndown: Vec<TurndownLine>,
    /// How far the turndown reaches below the slab's underside; zero without one.
    pub turndown_depth: f64,
    /// How thick the turndown is; zero without one.
    pub turndown_width: f64,
    /// The cutouts, one for each appliance, in the order of the design.
    pub cutouts: Vec<CounterCutout>,
    /// The slab in plan.
    pub slab: Slab,
    /// The sheet it is cast on, its cutouts and notches left out.
    pub substrate: Region,
}

/// What stands at a side of the counter.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SideKind {
    /// An open edge with the edge profile.
    Exposed,
    /// A wall: cut straight down at its plane.
    Wall,
    /// The side of a notch for the open front of this appliance: cut straight down.
    Notch(usize),
}

/// One side of the counter's plan.
#[derive(Clone, Debug, PartialEq)]
pub struct CounterSide {
    /// Number of the face it stands over.
    pub face: usize,
    /// What stands there.
    pub kind: SideKind,
    /// Where it starts on the outermost line, as if its corners were sharp.
    pub start: Point2,
    /// Where it ends, likewise.
    pub end: Point2,
    /// How far it passes the finished face; zero at walls and notches.
    pub overhang: f64,
    /// From the outermost line to the finished face below it, or to the tile band where that stands out farther;
    /// negative where that stands out past the counter. Zero at walls and notches.
    pub room: f64,
    /// True where it carries the turndown.
    pub dropped: bool,
}

/// One unbroken stretch of the turndown's inner line, the interior of the counter to its left.
#[derive(Clone, Debug, PartialEq)]
pub struct TurndownLine {
    /// Its points.
    pub vertices: Vec<Vertex>,
    /// True when it goes all round; the first point is not repeated.
    pub closed: bool,
}

/// A hole in the counter as it is cut.
#[derive(Clone, Debug, PartialEq)]
pub struct CounterCutout {
    /// Number of the appliance.
    pub appliance: usize,
    /// Number of its run.
    pub run: usize,
    /// Its edge; where the front is open, closed along the counter's front edge.
    pub outline: Outline,
    /// The edge of the appliance's flange on the counter; it ends at the front edge where the front is open.
    pub flange: Outline,
    /// The middle of the cutout.
    pub centre: Point2,
    /// True when it is open to the counter's front edge.
    pub open: bool,
}

impl CounterSide {
    /// From corner to corner on the outermost line, as if they were sharp.
    pub fn length(&self) -> f64 {
        (self.end - self.start).norm()
    }
}

impl CounterPlan {
    /// How far the counter passes the corner of the finished faces at the eased corner where side `i` starts, square to
    /// its line; `None` at a sharp corner.
    pub fn corner_room(&self, i: usize) -> Option<f64> {
        super::corner_room(&self.slab, &self.sides, i)
    }
}
