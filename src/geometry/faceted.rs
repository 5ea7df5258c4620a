//! A solid as triangles.

use super::Point3;

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
