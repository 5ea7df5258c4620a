//! Solids that are added to each other, taken from each other and parted, by a robust boolean of meshes.

use crate::geometry::{Bounds3, Faceted, Point3, Triangle};
use manifold_rust::manifold::Manifold;
use manifold_rust::types::{Error, MeshGL64};
use std::collections::BTreeMap;

/// Steps to the millimetre of the grid that solids stand on before they meet. Faces that should coincide then do so exactly,
/// and single precision holds every corner of a print up to sixteen metres.
pub const GRID: f64 = 1024.0;

/// The nearest step of the grid, millimetres.
pub fn on_grid(millimetres: f64) -> f64 {
    (millimetres * GRID).round() / GRID
}

/// The nearest point of the grid.
pub fn point_on_grid(point: Point3) -> Point3 {
    point.map(on_grid)
}

/// A solid of triangles that booleans can be made of.
#[derive(Clone)]
pub struct Body {
    inner: Manifold,
}

impl Body {
    /// The solid that a closed surface encloses, its corners on the grid; `None` when the surface is not closed.
    pub fn of(surface: &Faceted) -> Option<Self> {
        let points = surface.points.iter().copied().map(point_on_grid);
        let mesh = MeshGL64 {
            num_prop: 3,
            vert_properties: points.flat_map(|p| [p.x, p.y, p.z]).collect(),
            tri_verts: surface
                .triangles
                .iter()
                .flat_map(|t| t.corners.map(u64::from))
                .collect(),
            ..MeshGL64::default()
        };
        let inner = Manifold::from_mesh_gl64(&mesh);
        (inner.status() == Error::NoError && !inner.is_empty()).then_some(Self { inner })
    }

    /// A box along the axes; `None` when it encloses nothing.
    pub fn cuboid(bounds: &Bounds3) -> Option<Self> {
        let (l, h) = (bounds.low, bounds.high);
        let ring = |z: f64| {
            [[l.x, l.y], [h.x, l.y], [h.x, h.y], [l.x, h.y]].map(|[x, y]| Point3::new(x, y, z))
        };
        let is_solid = (0..3).all(|i| on_grid(l[i]) < on_grid(h[i]));
        is_solid.then(|| Self::between(&ring(l.z), &ring(h.z)))?
    }

    /// The prism between two convex rings of as many corners, the first counter-clockwise seen from outside the second.
    pub fn between(low: &[Point3], high: &[Point3]) -> Option<Self> {
        let n = low.len() as u32;
        let mut triangles = Vec::new();
        let mut add = |corners: [u32; 3]| {
            triangles.push(Triangle {
                corners,
                surface: 0,
            });
        };
        for i in 1..n.saturating_sub(1) {
            add([0, i + 1, i]);
            add([n, n + i, n + i + 1]);
        }
        for i in 0..n {
            let j = (i + 1) % n;
            add([i, j, n + j]);
            add([i, n + j, n + i]);
        }
        Self::of(&Faceted {
            points: low.iter().chain(high).copied().collect(),
            triangles,
        })
    }

    /// All of them as one; `None` of none. Neighbours in the list are joined first.
    pub fn union_of(bodies: Vec<Self>) -> Option<Self> {
        let mut row = bodies;
        while row.len() > 1 {
            row = row
                .chunks(2)
                .map(|pair| match pair {
                    [a, b] => a.with(b),
                    _ => pair[0].clone(),
                })
                .collect();
        }
        row.pop()
    }

    /// This and another one.
    pub fn with(&self, other: &Self) -> Self {
        Self {
            inner: self.inner.union(&other.inner),
        }
    }

    /// This without another one.
    pub fn without(&self, other: &Self) -> Self {
        Self {
            inner: self.inner.difference(&other.inner),
        }
    }

    /// What this and another one share.
    pub fn within(&self, other: &Self) -> Self {
        Self {
            inner: self.inner.intersection(&other.inner),
        }
    }

    /// The pieces that hang together, in a steady order.
    pub fn pieces(&self) -> Vec<Self> {
        let mut pieces: Vec<_> = self.inner.decompose().into_iter().collect();
        pieces.retain(|p| p.volume() > 0.0);
        pieces.into_iter().map(|inner| Self { inner }).collect()
    }

    /// The volume, mm³.
    pub fn volume(&self) -> f64 {
        self.inner.volume()
    }

    /// The box round it; `None` when it is nothing.
    pub fn bounds(&self) -> Option<Bounds3> {
        if self.inner.is_empty() {
            return None;
        }
        let found = self.inner.bounding_box();
        Some(Bounds3 {
            low: Point3::new(found.min.x, found.min.y, found.min.z),
            high: Point3::new(found.max.x, found.max.y, found.max.z),
        })
    }

    /// Its surface, corners on the grid, each plane a surface of its own.
    pub fn surface(&self) -> Faceted {
        let flat = self.inner.as_original().simplify(0.25 / GRID);
        let mesh = flat.get_mesh_gl64(-1);
        let width = (mesh.num_prop as usize).max(3);
        let rows = mesh.vert_properties.chunks_exact(width);
        let corners: Vec<_> = rows.map(|v| Point3::new(v[0], v[1], v[2])).collect();
        let triangles = mesh.tri_verts.chunks_exact(3);
        welded(
            &corners,
            triangles.map(|t| [t[0], t[1], t[2]].map(|i| i as usize)),
        )
    }
}

/// The surface of triangles whose corners are put on the grid: corners that meet are one, and a triangle that loses its area by
/// that is none.
fn welded(corners: &[Point3], triangles: impl Iterator<Item = [usize; 3]>) -> Faceted {
    let mut known = BTreeMap::new();
    let mut planes = BTreeMap::new();
    let mut found = Faceted::default();
    for triangle in triangles {
        let mut number = |i: usize| {
            let point = point_on_grid(corners[i]);
            *known.entry(steps(&point)).or_insert_with(|| {
                found.points.push(point);
                found.points.len() as u32 - 1
            })
        };
        let corners = triangle.map(&mut number);
        let [a, b, c] = corners;
        if a == b || b == c || c == a {
            continue;
        }
        let next = planes.len() as u32;
        let plane = plane_key(corners.map(|i| found.points[i as usize]));
        let surface = *planes.entry(plane).or_insert(next);
        found.triangles.push(Triangle { corners, surface });
    }
    found
}

/// A point of the grid in whole steps.
fn steps(point: &Point3) -> [i64; 3] {
    [point.x, point.y, point.z].map(|v| (v * GRID).round() as i64)
}

/// The plane of a triangle, rounded so that triangles of one plane have one key.
fn plane_key([a, b, c]: [Point3; 3]) -> [i64; 4] {
    let normal = (b - a).cross(&(c - a));
    let normal = normal.try_normalize(0.0).unwrap_or(normal);
    let offset = normal.dot(&a.coords);
    [normal.x * 1e4, normal.y * 1e4, normal.z * 1e4, offset * 1e2].map(|v| v.round() as i64)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cuboid(low: [f64; 3], high: [f64; 3]) -> Body {
        Body::cuboid(&Bounds3 {
            low: low.into(),
            high: high.into(),
        })
        .unwrap()
    }

    #[test]
    fn boxes_that_touch_become_one_and_have_their_volumes() {
        // 10 × 10 × 10 beside 5 × 10 × 10: one body of 1500 mm³ with 8 corners.
        let both = cuboid([0.0; 3], [10.0; 3]).with(&cuboid([10.0, 0.0, 0.0], [15.0, 10.0, 10.0]));
        assert_eq!(both.pieces().len(), 1);
        assert!((both.volume() - 1500.0).abs() < 1e-9);
        let surface = both.surface();
        surface.check().unwrap();
        assert_eq!((surface.points.len(), surface.triangles.len()), (8, 12));
    }

    #[test]
    fn a_bar_through_a_box_leaves_a_tunnel() {
        // 1000 − 2·2·10 = 960 mm³.
        let pierced =
            cuboid([0.0; 3], [10.0; 3]).without(&cuboid([4.0, 4.0, -1.0], [6.0, 6.0, 11.0]));
        assert!((pierced.volume() - 960.0).abs() < 1e-9);
        pierced.surface().check().unwrap();
        assert_eq!(pierced.pieces().len(), 1);
    }

    #[test]
    fn what_is_parted_comes_in_pieces() {
        let row = (0..5).map(|i| {
            let x = 20.0 * f64::from(i);
            cuboid([x, 0.0, 0.0], [x + 10.0, 10.0, 10.0])
        });
        let all = Body::union_of(row.collect()).unwrap();
        assert_eq!(all.pieces().len(), 5);
        assert!(
            all.within(&cuboid([11.0, 0.0, 0.0], [19.0, 10.0, 10.0]))
                .bounds()
                .is_none()
        );
    }

    #[test]
    fn nothing_is_no_body() {
        assert!(Body::of(&Faceted::default()).is_none());
        assert!(
            Body::cuboid(&Bounds3 {
                low: [0.0; 3].into(),
                high: [1.0, 1.0, 0.0001].into()
            })
            .is_none()
        );
        assert!(Body::union_of(vec![]).is_none());
    }
}
