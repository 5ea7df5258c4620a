//! The edges of one solid that a drawing may show.

use crate::geometry::{Faceted, Point3, Vector3};

/// Surfaces that meet at less than this are one smooth surface to the eye: more than the chord of a bend leaves
/// between its ends and the flats, less than a chamfer.
const CREASE: f64 = 25.0;

/// One edge between two triangles.
#[derive(Clone, Copy, Debug)]
pub(super) struct ShapeEdge {
    /// Numbers of its ends.
    pub ends: [u32; 2],
    /// Numbers of the triangles beside it; both the same where the surface is not closed.
    pub sides: [u32; 2],
    /// True when it shows from every side: a crease between two surfaces.
    pub sharp: bool,
}

/// A solid made ready for drawing, in its own coordinates: shared by all parts of that shape and all views.
#[derive(Clone, Debug, Default)]
pub struct Shape {
    pub(super) points: Vec<Point3>,
    pub(super) triangles: Vec<[u32; 3]>,
    pub(super) normals: Vec<Vector3>,
    pub(super) edges: Vec<ShapeEdge>,
}

impl Shape {
    /// Finds the edges of a faceted solid.
    pub fn new(faceted: &Faceted) -> Self {
        let triangles: Vec<_> = faceted.triangles.iter().map(|t| t.corners).collect();
        let normals: Vec<_> = triangles
            .iter()
            .map(|t| normal(&faceted.points, *t))
            .collect();
        let edges = edges(faceted, &normals);
        Self {
            points: faceted.points.clone(),
            triangles,
            normals,
            edges,
        }
    }

    /// Straight lines given in the coordinates of a view: they hide nothing, and show where nothing is before them.
    pub fn wires(wires: &[[Point3; 2]]) -> Self {
        let count = wires.len() as u32;
        Self {
            points: wires.iter().flatten().copied().collect(),
            triangles: Vec::new(),
            normals: vec![Vector3::z()],
            edges: (0..count)
                .map(|i| ShapeEdge {
                    ends: [2 * i, 2 * i + 1],
                    sides: [0, 0],
                    sharp: true,
                })
                .collect(),
        }
    }

    /// Its edges where it has no surface: see [`Shape::wires`].
    pub fn bare_edges(&self) -> impl Iterator<Item = [Point3; 2]> + '_ {
        let bare = self.edges.iter().filter(|_| self.triangles.is_empty());
        bare.map(|e| e.ends.map(|i| self.points[i as usize]))
    }

    /// Its triangles, counter-clockwise seen from outside.
    pub fn triangles(&self) -> impl Iterator<Item = [Point3; 3]> + '_ {
        let corners = self.triangles.iter();
        corners.map(|t| t.map(|i| self.points[i as usize]))
    }
}

fn normal(points: &[Point3], corners: [u32; 3]) -> Vector3 {
    let [a, b, c] = corners.map(|i| points[i as usize]);
    (b - a)
        .cross(&(c - a))
        .try_normalize(0.0)
        .unwrap_or_default()
}

fn edges(faceted: &Faceted, normals: &[Vector3]) -> Vec<ShapeEdge> {
    let mut sides: Vec<(u32, u32, u32)> = Vec::with_capacity(faceted.triangles.len() * 3);
    for (number, triangle) in faceted.triangles.iter().enumerate() {
        let [a, b, c] = triangle.corners;
        for (from, to) in [(a, b), (b, c), (c, a)] {
            sides.push((from.min(to), from.max(to), number as u32));
        }
    }
    sides.sort_unstable();
    sides
        .chunk_by(|x, y| (x.0, x.1) == (y.0, y.1))
        .filter_map(|group| edge(faceted, normals, group))
        .collect()
}

/// The edge of the triangles of one group; `None` for one inside a plane, which never shows.
fn edge(faceted: &Faceted, normals: &[Vector3], group: &[(u32, u32, u32)]) -> Option<ShapeEdge> {
    let (from, to, first) = *group.first()?;
    let second = group.last().map_or(first, |g| g.2);
    let cosine = normals[first as usize].dot(&normals[second as usize]);
    let open = first == second;
    if cosine > 1.0 - 1e-9 && !open {
        return None;
    }
    let surface = |t: u32| faceted.triangles[t as usize].surface;
    let creased = cosine < CREASE.to_radians().cos() && surface(first) != surface(second);
    Some(ShapeEdge {
        ends: [from, to],
        sides: [first, second],
        sharp: open || creased,
    })
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;
    use crate::geometry::Triangle;

    /// A box from the origin, its six sides as six surfaces.
    pub(in crate::drawing) fn cuboid(x: f64, y: f64, z: f64) -> Faceted {
        let points = (0..8)
            .map(|i| {
                let pick = |bit: usize, size: f64| if i >> bit & 1 == 1 { size } else { 0.0 };
                Point3::new(pick(0, x), pick(1, y), pick(2, z))
            })
            .collect();
        let sides: [[u32; 4]; 6] = [
            [0, 2, 3, 1],
            [4, 5, 7, 6],
            [0, 1, 5, 4],
            [2, 6, 7, 3],
            [0, 4, 6, 2],
            [1, 3, 7, 5],
        ];
        let triangles = sides
            .iter()
            .enumerate()
            .flat_map(|(surface, s)| {
                [[s[0], s[1], s[2]], [s[0], s[2], s[3]]].map(|corners| Triangle {
                    corners,
                    surface: surface as u32,
                })
            })
            .collect();
        Faceted { points, triangles }
    }

    #[test]
    fn a_box_has_twelve_edges_and_no_diagonals() {
        let shape = Shape::new(&cuboid(3.0, 4.0, 5.0));
        assert_eq!(shape.edges.len(), 12);
        assert!(shape.edges.iter().all(|e| e.sharp));
        for edge in &shape.edges {
            let [a, b] = edge.ends.map(|i| shape.points[i as usize]);
            let along = b - a;
            assert_eq!(along.iter().filter(|c| c.abs() > 0.0).count(), 1);
        }
    }

    #[test]
    fn facets_of_one_curved_surface_are_smooth() {
        let mut faceted = cuboid(3.0, 4.0, 5.0);
        for triangle in &mut faceted.triangles {
            triangle.surface = 0;
        }
        assert!(Shape::new(&faceted).edges.iter().all(|e| !e.sharp));
    }
}
