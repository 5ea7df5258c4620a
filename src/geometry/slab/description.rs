//! What a counter slab is described by.

use super::SlabCorner;
use crate::geometry::{Bounds2, Outline, Point2, Segment, Vertex};

/// How the plan outline turns a corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CornerShape {
    /// The two sides meet; their profiles are mitred.
    Sharp,
    /// A rounded corner of this radius, measured on the outermost line. Points of the profile whose inset is less
    /// than the radius run round on arcs about one centre; the others meet in a mitre.
    Rounded(f64),
    /// Cut off by a short side; legs of this length from the corner, measured on the outermost line. The short side
    /// has its neighbours' profile, and where the inset uses it up they meet in a mitre.
    Chamfered(f64),
}

/// One point of an edge profile, listed from the top face outwards, down, and back in under the slab.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ProfilePoint {
    /// Distance inwards from the outermost line, never negative, millimetres.
    pub inset: f64,
    /// Height above the slab's underside; negative in a turndown, millimetres.
    pub z: f64,
    /// How the curve to the next point bends (see [`crate::geometry::Vertex::bulge`]; x is the inset, y is z).
    pub bulge: f64,
}

/// One side of the slab's plan, from its corner to the next one counter-clockwise.
#[derive(Clone, Debug, PartialEq)]
pub struct SlabEdge {
    /// Where the side starts, on the outermost line; for a corner that is not sharp, where the two sides would meet.
    pub corner: Point2,
    /// How the outline turns at that start.
    pub shape: CornerShape,
    /// The edge profile: first point at z = thickness, last at z = 0. A plain side has insets of zero.
    pub profile: Vec<ProfilePoint>,
}

/// The slab as one solid: top face at z = `thickness`, underside at z = 0, turndowns below it.
///
/// Invariant: at a corner the two profiles are equal; or they share their first points (perhaps none), one of them, the
/// plain one, goes straight down from there to the underside with inset 0, and the other ends in its plane.
/// [`Slab::checked`] makes sure of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Slab {
    /// The sides counter-clockwise.
    pub edges: Vec<SlabEdge>,
    /// From underside to top, millimetres.
    pub thickness: f64,
    /// Holes right through, clear of every turndown.
    pub cutouts: Vec<Outline>,
}

impl ProfilePoint {
    /// A point from which the profile goes on straight.
    pub fn straight(inset: f64, z: f64) -> Self {
        Self::bent(inset, z, 0.0)
    }

    /// A point from which the profile goes on in an arc.
    pub fn bent(inset: f64, z: f64, bulge: f64) -> Self {
        Self { inset, z, bulge }
    }
}

impl SlabEdge {
    /// The stretches of the profile in order; x is the inset, y is z.
    pub fn stretches(&self) -> impl Iterator<Item = Segment> + '_ {
        self.profile.windows(2).map(|w| Segment {
            from: Point2::new(w[0].inset, w[0].z),
            to: Point2::new(w[1].inset, w[1].z),
            bulge: w[0].bulge,
        })
    }

    /// The box round one stretch of a profile.
    pub(super) fn box_of(stretch: Segment) -> Bounds2 {
        let end = Vertex {
            at: stretch.to,
            bulge: 0.0,
        };
        let start = Vertex {
            at: stretch.from,
            bulge: stretch.bulge,
        };
        Outline::new(vec![start, end]).bounds()
    }

    /// The profile of a side that is cut straight down: a wall, a notch.
    pub fn plain_profile(thickness: f64) -> Vec<ProfilePoint> {
        vec![
            ProfilePoint::straight(0.0, thickness),
            ProfilePoint::straight(0.0, 0.0),
        ]
    }
}

impl Slab {
    /// The corner where side `i` starts.
    ///
    /// # Panics
    /// When there is no side `i`.
    pub fn corner(&self, i: usize) -> SlabCorner {
        let n = self.edges.len();
        let at = |k: usize| self.edges[k % n].corner;
        SlabCorner::new(at(i + n - 1), at(i), at(i + 1), self.edges[i].shape)
    }

    /// The plan line that runs inside the outermost line by an inset for each side.
    ///
    /// # Panics
    /// When there are fewer insets than sides.
    pub fn line(&self, insets: &[f64]) -> Outline {
        let n = self.edges.len();
        let vertices = (0..n).flat_map(|i| self.corner(i).line(insets[(i + n - 1) % n], insets[i]));
        Outline::new(vertices.collect())
    }

    /// The outermost line.
    pub fn outline(&self) -> Outline {
        self.line(&vec![0.0; self.edges.len()])
    }
}
