//! The same solids as boundary representations: exact faces that share their edges.
//!
//! They are built from the description without boolean operations; planes, cylinders, cones, spheres and tori stay what
//! they are, and so do circles.

mod bend;
mod boundary;
mod check;
mod extrusion;
mod merge;
mod sewing;
mod sides;
mod slab;
mod slab_corner;
mod surfaces;
mod tabbed;
#[cfg(test)]
mod tests;

pub use boundary::{Along, Axes, Boundary, Curve, Edge, Face, Oval, Surface};

use super::Solid;

impl Solid {
    /// The solid's boundary representation; `None` where the description contradicts itself.
    pub fn boundary(&self) -> Option<Boundary> {
        match self {
            Self::Extrusion(s) => s.boundary(),
            Self::Tabbed(s) => s.boundary(),
            Self::Bend(s) => s.boundary(),
            Self::Slab(s) => s.boundary(),
        }
    }
}
