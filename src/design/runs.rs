//! Runs: the straight stretches of the chain.

use super::Placed;
use crate::units::Length;

/// A side of a run. Left and right are as the cook sees them, standing at the working side.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Side {
    /// Where the cook stands.
    Working,
    /// The other long side.
    Seating,
    /// The left end: where the run starts.
    Left,
    /// The right end.
    Right,
}

impl Side {
    /// All four.
    pub const ALL: [Self; 4] = [Self::Working, Self::Seating, Self::Left, Self::Right];

    /// Its name in messages and on drawings.
    pub fn name(self) -> &'static str {
        match self {
            Self::Working => "working side",
            Self::Seating => "seating side",
            Self::Left => "left end",
            Self::Right => "right end",
        }
    }
}

/// Which way the chain turns from one run to the next, seen from above, walking from left to right.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Turn {
    /// A quarter turn to the left: the cook stands outside the corner.
    Left,
    /// A quarter turn to the right: the cook stands inside the corner.
    Right,
}

/// Which run's frame goes through a corner; the other butts against it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Passes {
    /// The run before the corner.
    Earlier,
    /// The run after the corner.
    Later,
}

/// One straight stretch.
#[derive(Clone, Debug, PartialEq)]
pub struct Run {
    /// Its name, such as `cook`.
    pub name: Placed<String>,
    /// The letters its part marks begin with, unique, such as `C`.
    pub mark: String,
    /// Frame length overall along the outer side, corner squares included.
    pub length: Placed<Length>,
    /// Frame depth, working side to seating side.
    pub depth: Placed<Length>,
    /// Sides that stand against a wall: no boards, no overhang.
    pub walls: Vec<Side>,
    /// How the chain turns into this run; `None` for the first run only.
    pub turn: Option<Placed<Turn>>,
    /// Which run passes through the corner at this run's start; of no meaning for the first.
    pub passes: Passes,
    /// Where bulkheads stand: their middle, measured from the left end.
    pub bulkheads: Vec<Placed<Length>>,
}
