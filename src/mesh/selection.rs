//! Parts chosen for one model file.

use crate::geometry::{Faceted, Point3, Vector3};
use crate::parts::Part;

/// A part and the surface of its shape, in the shape's own coordinates.
#[derive(Clone, Copy, Debug)]
pub struct Instance<'a> {
    /// The part: its mark and its place.
    pub part: &'a Part,
    /// The surface that it shares with equal parts.
    pub mesh: &'a Faceted,
}

/// One triangle in its place in the world, counter-clockwise seen from outside, millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Facet {
    /// Unit length, outwards.
    pub normal: Vector3,
    /// The corners.
    pub corners: [Point3; 3],
}

/// Parts in the order they are written.
#[derive(Clone, Debug)]
pub struct Selection<'a> {
    instances: Vec<Instance<'a>>,
}

impl<'a> Selection<'a> {
    pub(super) fn new(instances: Vec<Instance<'a>>) -> Self {
        Self { instances }
    }

    /// The parts with their surfaces.
    pub fn instances(&self) -> &[Instance<'a>] {
        &self.instances
    }

    /// How many triangles all parts have together.
    pub fn triangle_count(&self) -> usize {
        self.instances.iter().map(|i| i.mesh.triangles.len()).sum()
    }

    /// All triangles in their places, part after part.
    pub fn facets(&self) -> impl Iterator<Item = Facet> + '_ {
        self.instances.iter().flat_map(Instance::facets)
    }
}

impl Instance<'_> {
    /// The triangles in their places.
    pub fn facets(&self) -> impl Iterator<Item = Facet> + '_ {
        let placement = &self.part.placement;
        let points: Vec<Point3> = self.mesh.points.iter().map(|p| placement * p).collect();
        self.mesh.triangles.iter().map(move |t| {
            let corners = t.corners.map(|i| points[i as usize]);
            let [a, b, c] = corners;
            let normal = (b - a).cross(&(c - a)).normalize();
            Facet { normal, corners }
        })
    }
}
