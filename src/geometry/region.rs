//! A piece of a plane: one outer outline and the holes in it.

use super::Outline;

/// An area bounded by one outline, less the holes inside it.
///
/// Invariant: holes lie inside the outer outline and apart from each other; all are stored counter-clockwise.
#[derive(Clone, Debug, PartialEq)]
pub struct Region {
    /// The outside.
    pub outer: Outline,
    /// The holes.
    pub holes: Vec<Outline>,
}

impl Region {
    /// A region without holes.
    pub fn solid(outer: Outline) -> Self {
        Self {
            outer,
            holes: Vec::new(),
        }
    }

    /// The exact area, mm².
    pub fn area(&self) -> f64 {
        self.outer.area() - self.holes.iter().map(Outline::area).sum::<f64>()
    }
}
