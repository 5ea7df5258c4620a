//! All parts together, equal shapes stored once.

use super::Part;
use crate::geometry::{Placement, Solid};
use std::collections::BTreeMap;

/// Number of a shape in its [`Assembly`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct SolidId(pub usize);

/// Every part of the island.
///
/// Invariant: marks are unique; every part's `solid` is in `solids`; no two of `solids` are equal.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Assembly {
    /// The shapes.
    pub solids: Vec<Solid>,
    /// The parts, in the order they are built.
    pub parts: Vec<Part>,
    known: BTreeMap<Vec<i64>, SolidId>,
}

impl Assembly {
    /// The pieces with their shapes numbered, equal shapes once.
    pub fn new(pieces: impl IntoIterator<Item = Piece>) -> Self {
        let mut assembly = Self::default();
        assembly.extend(pieces);
        assembly
    }

    /// The shape of a part.
    pub fn solid(&self, part: &Part) -> &Solid {
        &self.solids[part.solid.0]
    }

    /// Adds pieces; a shape that is there already, to within a millionth of a millimetre, is shared.
    pub(super) fn extend(&mut self, pieces: impl IntoIterator<Item = Piece>) {
        for Piece { mut part, solid } in pieces {
            let next = SolidId(self.solids.len());
            part.solid = *self.known.entry(solid.key()).or_insert(next);
            if part.solid == next {
                self.solids.push(solid);
            }
            self.parts.push(part);
        }
    }
}

/// A part before its shape has a number.
#[derive(Clone, Debug)]
pub struct Piece {
    /// Everything but the shape; its `solid` is overwritten.
    pub part: Part,
    /// The shape.
    pub solid: Solid,
}

impl Piece {
    /// The placement, for reading.
    pub fn placement(&self) -> &Placement {
        &self.part.placement
    }
}
