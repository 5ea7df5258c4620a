//! Where the edges of a solid cross the plane.

use crate::geometry::{Faceted, Point3};
use std::collections::BTreeMap;

/// Crossings nearer to each other than this are one, millimetres: no triangle is slimmer.
const ONE_POINT: f64 = 2e-4;

/// One point for every edge that crosses the plane.
pub(super) struct Crossings {
    /// By the edge's corners, the lower number first: the number of its point.
    of_edges: BTreeMap<(u32, u32), u32>,
    points: Vec<Point3>,
}

impl Crossings {
    /// Finds them from the corners' heights over the plane, none of which is 0; the points are put at `level` and
    /// numbered on from the solid's corners.
    pub fn new(solid: &Faceted, heights: &[f64], level: f64) -> Self {
        let mut edges: Vec<(u32, u32)> = Vec::new();
        for t in &solid.triangles {
            let [a, b, c] = t.corners;
            let crossing = [(a, b), (b, c), (c, a)].into_iter().filter(|(from, to)| {
                (heights[*from as usize] < 0.0) != (heights[*to as usize] < 0.0)
            });
            edges.extend(crossing.map(|(from, to)| (from.min(to), from.max(to))));
        }
        edges.sort_unstable();
        edges.dedup();
        let at = |(a, b): (u32, u32)| {
            let (p, q) = (solid.points[a as usize], solid.points[b as usize]);
            let (h, k) = (heights[a as usize], heights[b as usize]);
            let crossed = p + (q - p) * (h / (h - k));
            Point3::new(crossed.x, crossed.y, level)
        };
        let places: Vec<Point3> = edges.iter().map(|e| at(*e)).collect();
        let (numbers, points) = welded(&places);
        let first = solid.points.len() as u32;
        let numbers = numbers.into_iter().map(|n| first + n);
        Self {
            of_edges: edges.into_iter().zip(numbers).collect(),
            points,
        }
    }

    /// The points, in the order of their numbers.
    pub fn points(&self) -> impl Iterator<Item = Point3> + '_ {
        self.points.iter().copied()
    }

    /// The number of the point where an edge crosses.
    pub fn of(&self, from: u32, to: u32) -> Option<u32> {
        self.of_edges.get(&(from.min(to), from.max(to))).copied()
    }
}

/// The number of each place's point, and the points: places near each other share one.
fn welded(places: &[Point3]) -> (Vec<u32>, Vec<Point3>) {
    let mut order: Vec<usize> = (0..places.len()).collect();
    order.sort_by(|a, b| places[*a].x.total_cmp(&places[*b].x).then(a.cmp(b)));
    let mut numbers = vec![0; places.len()];
    let mut points: Vec<Point3> = Vec::new();
    for i in order {
        let place = places[i];
        let mut near = (0..points.len())
            .rev()
            .take_while(|k| place.x - points[*k].x < ONE_POINT);
        let found = near.find(|k| (place - points[*k]).norm() < ONE_POINT);
        let number = found.unwrap_or_else(|| {
            points.push(place);
            points.len() - 1
        });
        numbers[i] = number as u32;
    }
    (numbers, points)
}
