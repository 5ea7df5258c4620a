//! What lies under and in the slab, in pieces.

use super::mesh;
use super::piece::SheetPiece;
use super::substrate::{Laid, as_laid};
use crate::parts::Assembly;
use crate::plan::Plan;

/// Substrate and mesh in the pieces that they are laid in: what quantities and sheet lists both speak of.
#[derive(Clone, Debug, PartialEq)]
pub struct Laying {
    pub(in crate::takeoff) substrate: Laid,
    pub(in crate::takeoff) mesh: Vec<SheetPiece>,
}

impl Laying {
    /// The pieces of an island.
    pub fn of(plan: &Plan, assembly: &Assembly) -> Self {
        Self {
            substrate: as_laid(plan, assembly),
            mesh: mesh::pieces(plan),
        }
    }
}
