//! The counter.

use super::{Casting, Placed, Side};
use crate::units::Length;

/// The shape of the slab's exposed edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum EdgeProfile {
    /// Square, its top and bottom arris eased by a small radius (zero leaves it sharp).
    Square {
        /// Radius of the arris.
        eased: Length,
    },
    /// A 45 degree chamfer at the top.
    Chamfer {
        /// Its legs.
        size: Length,
    },
    /// A half circle over the whole height of the edge.
    HalfRound,
    /// A quarter circle at the top.
    QuarterRound {
        /// Its radius.
        radius: Length,
    },
    /// A quarter circle hollowed out of the bottom.
    Cove {
        /// Its radius.
        radius: Length,
    },
}

impl EdgeProfile {
    /// Its name in lists.
    pub fn name(&self) -> &'static str {
        match self {
            Self::Square { .. } => "square",
            Self::Chamfer { .. } => "chamfer",
            Self::HalfRound => "half-round",
            Self::QuarterRound { .. } => "quarter-round",
            Self::Cove { .. } => "cove",
        }
    }
}

/// The shape of an outward corner of the counter's plan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PlanCorner {
    /// The sides meet.
    Sharp,
    /// Cut off at 45 degrees by legs of this length.
    Chamfered(Length),
    /// Rounded with this radius.
    Rounded(Length),
}

/// The thicker rim.
#[derive(Clone, Debug, PartialEq)]
pub struct Turndown {
    /// How far it reaches below the slab's underside.
    pub depth: Placed<Length>,
    /// How thick it is, from the edge inwards.
    pub width: Placed<Length>,
}

/// How far the counter passes the finished face, by side; walls have none whatever stands here.
#[derive(Clone, Debug, PartialEq)]
pub struct Overhang {
    /// Past each run's working face.
    pub working: Placed<Length>,
    /// Past each run's seating face.
    pub seating: Placed<Length>,
    /// Past the island's left end.
    pub left: Placed<Length>,
    /// Past the island's right end.
    pub right: Placed<Length>,
}

impl Overhang {
    /// The overhang of a side.
    pub fn of(&self, side: Side) -> &Placed<Length> {
        match side {
            Side::Working => &self.working,
            Side::Seating => &self.seating,
            Side::Left => &self.left,
            Side::Right => &self.right,
        }
    }
}

/// The counter slab.
#[derive(Clone, Debug, PartialEq)]
pub struct Counter {
    /// Thickness away from the turndown.
    pub thickness: Placed<Length>,
    /// How far it passes the finished faces.
    pub overhang: Overhang,
    /// The rim, where there is one.
    pub turndown: Option<Turndown>,
    /// Which sides have the rim; the others end at the slab's thickness.
    pub turndown_sides: Vec<Side>,
    /// The shape of the edge.
    pub profile: Placed<EdgeProfile>,
    /// The shape of outward corners.
    pub corners: Placed<PlanCorner>,
    /// How it is made.
    pub casting: Casting,
}
