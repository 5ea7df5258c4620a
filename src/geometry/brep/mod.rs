//! The same solids as boundary representations: exact faces that share their edges.
//!
//! They are built from the description without boolean operations; two that share a face already defeat those.

mod bend;
mod extrusion;
mod sketch;
mod tabbed;

use super::Solid;

/// A solid bounded by exact faces.
pub type Boundary = truck_modeling::Solid;

impl Solid {
    /// The solid's boundary representation; `None` where there is none, or the description contradicts itself.
    pub fn boundary(&self) -> Option<Boundary> {
        match self {
            Self::Extrusion(s) => s.boundary(),
            Self::Tabbed(s) => s.boundary(),
            Self::Bend(s) => s.boundary(),
            Self::Slab(_) => None,
        }
    }
}
