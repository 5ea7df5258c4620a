//! A solid as triangles.

use super::{Bounds3, Placement, Point3};

/// One triangle, counter-clockwise seen from outside.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Triangle {
    /// Numbers of its corners.
    pub corners: [u32; 3],
    /// Which surface of the solid it lies on: a plane or one curved strip.
    pub surface: u32,
}

/// A closed surface of triangles round one solid.
///
/// Invariant: every edge belongs to exactly two triangles, which run along it in opposite directions; every point is
/// used; no triangle is without area. Edges between two surfaces that meet at an angle are what a drawing shows.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Faceted {
    /// The corners, none twice.
    pub points: Vec<Point3>,
    /// The triangles.
    pub triangles: Vec<Triangle>,
}

impl Faceted {
    /// The corners of a triangle.
    pub fn corners(&self, triangle: &Triangle) -> [Point3; 3] {
        triangle.corners.map(|i| self.points[i as usize])
    }

    /// The volume enclosed, mm³; negative when the triangles face inwards.
    pub fn volume(&self) -> f64 {
        let Some(from) = self.points.first() else {
            return 0.0;
        };
        let sixfold: f64 = self
            .triangles
            .iter()
            .map(|t| self.corners(t).map(|p| p - from))
            .map(|[a, b, c]| a.dot(&b.cross(&c)))
            .sum();
        sixfold / 6.0
    }

    /// The box round it; `None` without a point.
    pub fn bounds(&self) -> Option<Bounds3> {
        Bounds3::around(self.points.iter().copied())
    }

    /// The same surface in another place.
    pub fn moved(&self, placement: &Placement) -> Self {
        Self {
            points: self.points.iter().map(|p| placement * p).collect(),
            triangles: self.triangles.clone(),
        }
    }
}
