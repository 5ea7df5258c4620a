//! The counter slab: a plan outline, an edge profile on each side, and cutouts.

use super::{Outline, Point2};

/// How the plan outline turns a corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CornerShape {
    /// The two sides meet; their profiles are mitred.
    Sharp,
    /// A rounded corner of this radius, measured on the outermost line.
    Rounded(f64),
}

/// One point of an edge profile, listed from the top face outwards, down, and back in under the slab.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ProfilePoint {
    /// Distance inwards from the outermost line, never negative, millimetres.
    pub inset: f64,
    /// Height above the slab's underside; negative in a turndown, millimetres.
    pub z: f64,
    /// How the curve to the next point bends (see [`super::Vertex::bulge`]; x is the inset, y is z).
    pub bulge: f64,
}

/// One side of the slab's plan, from its corner to the next one counter-clockwise.
#[derive(Clone, Debug, PartialEq)]
pub struct SlabEdge {
    /// Where the side starts, on the outermost line.
    pub corner: Point2,
    /// How the outline turns at that start.
    pub shape: CornerShape,
    /// The edge profile: first point at z = thickness, last at z = 0. A plain side has insets of zero.
    pub profile: Vec<ProfilePoint>,
}

/// The slab as one solid: top face at z = `thickness`, underside at z = 0, turndowns below it.
///
/// Invariant: at a corner the two profiles are equal, or they share their first points and one of them goes on
/// straight down (inset 0) from there.
#[derive(Clone, Debug, PartialEq)]
pub struct Slab {
    /// The sides counter-clockwise.
    pub edges: Vec<SlabEdge>,
    /// From underside to top, millimetres.
    pub thickness: f64,
    /// Holes right through, clear of every turndown.
    pub cutouts: Vec<Outline>,
}

// Stand-ins until the slab's own module lands.
impl Slab {
    /// The exact volume, mm³.
    pub fn volume(&self) -> f64 {
        0.0
    }

    /// The exact box round it.
    pub fn bounds(&self) -> super::Bounds3 {
        super::Bounds3 {
            low: super::Point3::origin(),
            high: super::Point3::origin(),
        }
    }

    /// Its triangles.
    pub fn faceted(&self, _tolerance: f64) -> super::Faceted {
        super::Faceted::default()
    }
}
