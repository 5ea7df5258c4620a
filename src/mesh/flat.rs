//! A surface with flat sides, as viewers take it.

use super::y_up;
use crate::geometry::{Faceted, Vector3};
use std::collections::BTreeMap;

/// Normals that agree to so many parts of one belong to one flat side.
const SAME: f64 = 1e4;

/// A surface whose sides are flat and meet in sharp edges: metres, y up.
///
/// Invariant: `positions` and `normals` are of one length; `indices` are three for each triangle, counter-clockwise seen from
/// outside, each smaller than that length; every corner is used. A corner that two sides share is there once for each.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct FlatSurface {
    /// The corners.
    pub positions: Vec<[f32; 3]>,
    /// Outwards, unit length, the same all over a side.
    pub normals: Vec<[f32; 3]>,
    /// The triangles.
    pub indices: Vec<u32>,
}

impl FlatSurface {
    /// The surface of a shape.
    pub fn of(mesh: &Faceted) -> Self {
        let mut surface = Self::default();
        let mut known = BTreeMap::new();
        for triangle in &mesh.triangles {
            let [a, b, c] = mesh.corners(triangle);
            let normal = (b - a).cross(&(c - a)).normalize();
            let side = normal.map(|n| (n * SAME).round() as i32);
            for corner in triangle.corners {
                let key = (corner, side.x, side.y, side.z);
                let index = *known
                    .entry(key)
                    .or_insert_with(|| surface.corner(mesh, corner, &normal));
                surface.indices.push(index);
            }
        }
        surface
    }

    fn corner(&mut self, mesh: &Faceted, corner: u32, normal: &Vector3) -> u32 {
        self.positions
            .push(y_up::point(&mesh.points[corner as usize]));
        self.normals.push(y_up::direction(normal));
        (self.positions.len() - 1) as u32
    }

    /// The lowest and the highest of each coordinate; nothing without a corner.
    pub fn extent(&self) -> Option<[[f32; 3]; 2]> {
        let first = *self.positions.first()?;
        let wider = |[low, high]: [[f32; 3]; 2], p: &[f32; 3]| {
            let of = |pick: fn(f32, f32) -> f32, a: [f32; 3]| [0, 1, 2].map(|i| pick(a[i], p[i]));
            [of(f32::min, low), of(f32::max, high)]
        };
        Some(self.positions.iter().fold([first, first], wider))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Solid;

    #[test]
    fn a_box_has_four_corners_to_a_side_and_says_which_way_each_looks() {
        let surface = FlatSurface::of(&Solid::cuboid(1000.0, 200.0, 300.0).faceted(0.1));
        assert_eq!((surface.positions.len(), surface.indices.len()), (24, 36));
        assert_eq!(surface.extent(), Some([[0.0, 0.0, -0.2], [1.0, 0.3, 0.0]]));
        for triangle in surface.indices.chunks(3) {
            let [a, b, c] = [0, 1, 2].map(|i| triangle[i] as usize);
            let at = |i: usize| Vector3::from(surface.positions[i].map(f64::from));
            let across = (at(b) - at(a)).cross(&(at(c) - at(a))).normalize();
            for corner in [a, b, c] {
                let normal = Vector3::from(surface.normals[corner].map(f64::from));
                assert!((normal - across).norm() < 1e-6);
            }
        }
    }

    #[test]
    fn nothing_has_no_extent() {
        let surface = FlatSurface::of(&Faceted::default());
        assert_eq!((surface.extent(), surface.indices.len()), (None, 0));
    }
}
