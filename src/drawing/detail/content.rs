//! What a detail consists of, before it is drawn.

use crate::drawing::dimension::Side;
use crate::drawing::hatch::Material;
use crate::drawing::hidden::View;
use crate::drawing::section::Reach;
use crate::geometry::{Bounds2, Outline, Point2};
use crate::parts::{Part, PartKind};

/// Everything that one detail shows and says. Coordinates are those of its plane, millimetres built.
#[derive(Clone, Debug)]
pub struct Content {
    /// Where it is cut.
    pub view: View,
    /// What of that is drawn.
    pub window: Window,
    /// True for the parts that are drawn.
    pub shows: fn(&Part) -> bool,
    /// What is there but is no part.
    pub extras: Vec<Extra>,
    /// Chains of dimensions; those of one side come from the view outwards.
    pub chains: Vec<Chain>,
    /// Its notes.
    pub notes: Vec<Note>,
}

/// The window of a detail.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Window {
    /// What is drawn.
    pub area: Bounds2,
    /// How far beyond the plane one looks.
    pub deep: f64,
}

impl Window {
    /// What is cut and looked at.
    pub fn reach(&self) -> Reach {
        Reach {
            depth: self.deep,
            window: Some(self.area),
        }
    }
}

/// Something drawn that is no part.
#[derive(Clone, Debug, PartialEq)]
pub enum Extra {
    /// A surface that is cut.
    Cut(Stuff, Outline),
    /// What is taken out of the parts of a kind.
    Hollow(PartKind, Outline),
    /// A wire or bar that lies in the plane, along its middle; how thick it is.
    Wire(Point2, Point2, f64),
    /// A wire or bar that passes through the plane; how thick it is.
    Dot(Point2, f64),
    /// A screw: its head, and its tip.
    Screw(Point2, Point2),
    /// An edge of something that is not drawn otherwise.
    Edge(Point2, Point2),
}

/// Of what an extra is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stuff {
    /// A material with a hatch.
    Of(Material),
    /// Shims, one on the other.
    Shims,
    /// Sealant.
    Sealant,
}

/// A chain of dimensions.
#[derive(Clone, Debug, PartialEq)]
pub struct Chain {
    /// On which side of the view.
    pub side: Side,
    /// What it measures; may be empty.
    pub name: &'static str,
    /// What it measures between.
    pub stations: Vec<f64>,
}

/// A note and what it points to.
#[derive(Clone, Debug, PartialEq)]
pub struct Note {
    /// What it says.
    pub text: String,
    /// What it points to.
    pub target: Target,
}

/// What a note points to.
#[derive(Clone, Debug, PartialEq)]
pub enum Target {
    /// The cut surface of parts of a kind whose section begins so; where none is cut, an edge of one that is seen. The
    /// note is left out where there is none at all.
    Part(PartKind, &'static str),
    /// One of some points, the best first.
    At(Vec<Point2>),
    /// Nothing: it speaks of the whole.
    Whole,
}

impl Note {
    /// A note on parts of a kind.
    pub fn on(kind: PartKind, text: String) -> Self {
        Self {
            text,
            target: Target::Part(kind, ""),
        }
    }

    /// A note on the parts of a kind whose section begins so.
    pub fn on_some(kind: PartKind, section: &'static str, text: String) -> Self {
        Self {
            text,
            target: Target::Part(kind, section),
        }
    }

    /// A note on a place.
    pub fn at(points: &[(f64, f64)], text: String) -> Self {
        let points = points.iter().map(|&(x, y)| Point2::new(x, y));
        Self {
            text,
            target: Target::At(points.collect()),
        }
    }

    /// A note on the whole.
    pub fn whole(text: String) -> Self {
        Self {
            text,
            target: Target::Whole,
        }
    }
}

impl Chain {
    /// A chain on a side.
    pub fn new(side: Side, name: &'static str, stations: &[f64]) -> Self {
        Self {
            side,
            name,
            stations: stations.to_vec(),
        }
    }
}
