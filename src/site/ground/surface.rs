//! The ground as a surface: flat triangles between the levels, and beyond them the best-fit plane.

use crate::geometry::{BestPlane, NoPlane, Point2, Point3};
use spade::{DelaunayTriangulation, FloatTriangulation, HasPosition, Triangulation};

/// The height of the ground at a place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Height {
    /// Above the zero of the levels, millimetres.
    pub z: f64,
    /// True outside the levels: it was not measured there, and the plane stands for it.
    pub beyond: bool,
}

/// A surface through spot levels.
///
/// Between the levels it is flat over each triangle of their Delaunay triangulation. Beyond them it goes on as the best-fit
/// plane runs, from the nearest edge of what was measured, so that there is no step.
#[derive(Clone, Debug)]
pub struct Surface {
    plane: BestPlane,
    triangles: DelaunayTriangulation<Vertex>,
    /// The edges round the levels.
    rim: Vec<[Point3; 2]>,
}

#[derive(Clone, Copy, Debug)]
struct Vertex {
    at: spade::Point2<f64>,
    z: f64,
    number: usize,
}

impl HasPosition for Vertex {
    type Scalar = f64;

    fn position(&self) -> spade::Point2<f64> {
        self.at
    }
}

impl Vertex {
    fn point(&self) -> Point3 {
        Point3::new(self.at.x, self.at.y, self.z)
    }
}

/// Places are taken on a fine binary grid: numbers too small for the triangulation are zero on it.
fn on_grid(mm: f64) -> f64 {
    const FINE: f64 = 1_048_576.0;
    (mm * FINE).round() / FINE
}

impl Surface {
    /// The surface through levels at different places.
    ///
    /// # Errors
    /// When they make no plane.
    pub fn through(levels: &[Point3]) -> Result<Self, NoPlane> {
        let plane = BestPlane::through(levels)?;
        let vertices = levels.iter().enumerate().map(|(number, p)| Vertex {
            at: spade::Point2::new(on_grid(p.x), on_grid(p.y)),
            z: p.z,
            number,
        });
        let triangles = DelaunayTriangulation::bulk_load_stable(vertices.collect())
            .map_err(|_| NoPlane::TooFew)?;
        let rim = triangles.convex_hull();
        let rim = rim.map(|edge| [edge.from(), edge.to()].map(|v| v.data().point()));
        let rim = rim.collect();
        Ok(Self {
            plane,
            triangles,
            rim,
        })
    }

    /// The best-fit plane.
    pub fn plane(&self) -> &BestPlane {
        &self.plane
    }

    /// The height at a place.
    pub fn at(&self, place: Point2) -> Height {
        let inside = self
            .triangles
            .barycentric()
            .interpolate(|v| v.data().z, spade::Point2::new(place.x, place.y));
        match inside {
            Some(z) if z.is_finite() => Height { z, beyond: false },
            _ => Height {
                z: self.plane.at(place) + self.rest_at_rim(place),
                beyond: true,
            },
        }
    }

    /// How much the ground stands above the plane at the nearest point of the rim.
    fn rest_at_rim(&self, place: Point2) -> f64 {
        let nearest = self.rim.iter().map(|[a, b]| {
            let along = (b - a).xy();
            let share = (place - a.xy()).dot(&along) / along.norm_squared().max(1e-12);
            let foot = a + (b - a) * share.clamp(0.0, 1.0);
            ((place - foot.xy()).norm_squared(), foot)
        });
        let nearest = nearest.reduce(|best, next| if next.0 < best.0 { next } else { best });
        nearest.map_or(0.0, |(_, foot)| self.plane.residual(&foot))
    }

    /// How far the nearest level is from a place, millimetres.
    pub fn nearest(&self, place: Point2) -> f64 {
        let nearest = self
            .triangles
            .nearest_neighbor(spade::Point2::new(place.x, place.y));
        nearest.map_or(f64::MAX, |v| (v.data().point().xy() - place).norm())
    }

    /// All edges of the triangles.
    pub fn edges(&self) -> impl Iterator<Item = [Point3; 2]> {
        let edges = self.triangles.undirected_edges();
        edges.map(|edge| edge.vertices().map(|v| v.data().point()))
    }

    /// All triangles.
    pub fn triangles(&self) -> impl Iterator<Item = [Point3; 3]> {
        let faces = self.triangles.inner_faces();
        faces.map(|face| face.vertices().map(|v| v.data().point()))
    }

    /// Where water stands: the numbers of levels lower than all round them, each with how deep water stands there before it
    /// runs off, at least, millimetres.
    pub fn pools(&self) -> impl Iterator<Item = (usize, f64)> {
        let inner = self.triangles.vertices();
        let inner = inner.filter(|v| v.out_edges().all(|e| !is_rim(&e)));
        inner.filter_map(|vertex| {
            let round = vertex.out_edges().map(|e| e.to().data().z);
            let lowest = round.fold(f64::INFINITY, f64::min);
            let deep = lowest - vertex.data().z;
            (deep > 0.0 && deep.is_finite()).then_some((vertex.data().number, deep))
        })
    }
}

fn is_rim(edge: &spade::handles::DirectedEdgeHandle<'_, Vertex, (), (), ()>) -> bool {
    edge.is_outer_edge() || edge.rev().is_outer_edge()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Four corners of a square of 1000 on z = 0 and a middle 10 lower.
    fn bowl() -> Vec<Point3> {
        [
            [0.0, 0.0, 0.0],
            [1000.0, 0.0, 0.0],
            [0.0, 1000.0, 0.0],
            [1000.0, 1000.0, 0.0],
            [500.0, 500.0, -10.0],
        ]
        .map(|[x, y, z]| Point3::new(x, y, z))
        .to_vec()
    }

    #[test]
    fn between_levels_the_ground_is_flat_and_beyond_them_it_is_the_plane() {
        let surface = Surface::through(&bowl()).unwrap();
        let at = |x: f64, y: f64| surface.at(Point2::new(x, y));
        // Half way from the middle to a corner, and a quarter of the way to a side.
        assert!((at(250.0, 250.0).z + 5.0).abs() < 1e-9 && !at(250.0, 250.0).beyond);
        assert!((at(500.0, 375.0).z + 7.5).abs() < 1e-9);
        // The plane is level at -2: from the rim, which is at 0, the ground goes on level.
        assert!((surface.plane().height + 2.0).abs() < 1e-9);
        assert!(at(-300.0, 500.0).z.abs() < 1e-9 && at(-300.0, 500.0).beyond);
        assert!(at(1400.0, 1400.0).z.abs() < 1e-9);
        assert!((surface.nearest(Point2::new(-300.0, 400.0)) - 500.0).abs() < 1e-9);
        assert_eq!(surface.pools().collect::<Vec<_>>(), [(4, 10.0)]);
    }

    #[test]
    fn there_is_no_step_at_the_rim() {
        let mut points = bowl();
        points[1].z = 30.0;
        points.push(Point3::new(1300.0, 400.0, -12.0));
        let surface = Surface::through(&points).unwrap();
        for t in 0..200 {
            let angle = f64::from(t) * 0.031_4;
            let way = crate::geometry::Vector2::new(angle.cos(), angle.sin());
            let along = (0..4000).map(|k| Point2::new(600.0, 500.0) + way * f64::from(k) * 0.5);
            let heights: Vec<f64> = along.map(|p| surface.at(p).z).collect();
            let step = heights.windows(2).map(|w| (w[1] - w[0]).abs());
            assert!(step.fold(0.0, f64::max) < 0.2);
        }
    }
}
