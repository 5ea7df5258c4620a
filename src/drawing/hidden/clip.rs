//! How one triangle hides a piece of one edge.

use crate::geometry::{Bounds2, Point2, Point3, Vector2};

/// How far a triangle reaches past its border, millimetres: neighbours leave no crack between them.
const REACH: f64 = 1e-4;

/// How much nearer a triangle must be to hide, millimetres: parts that touch do not hide each other's edges.
pub(super) const NEARER: f64 = 0.02;

/// Steeper triangles are not used: the surface beside them hides what they would.
const STEEP: f64 = 0.01;

/// A triangle turned to the eye, in the coordinates of the view.
#[derive(Clone, Copy, Debug)]
pub(super) struct Occluder {
    corners: [Point2; 3],
    /// Depth at the origin of the view and its growth along x and y.
    depth: f64,
    slope: Vector2,
    pub bounds: Bounds2,
    /// Its nearest point's depth, larger is nearer.
    pub nearest: f64,
}

impl Occluder {
    /// From corners in view coordinates, z towards the eye; `None` for one that is turned away or seen edge on.
    pub fn new(corners: [Point3; 3]) -> Option<Self> {
        let [a, b, c] = corners;
        let normal = (b - a).cross(&(c - a));
        if normal.z <= STEEP * normal.norm() {
            return None;
        }
        let slope = Vector2::new(-normal.x / normal.z, -normal.y / normal.z);
        let flat = corners.map(|p| p.xy());
        Some(Self {
            corners: flat,
            depth: a.z - slope.dot(&a.xy().coords),
            slope,
            bounds: Bounds2::around(flat)?,
            nearest: a.z.max(b.z).max(c.z),
        })
    }

    /// Its depth at a point of the view; `None` where it is not.
    pub fn depth_at(&self, at: Point2) -> Option<f64> {
        let inside = (0..3).all(|i| {
            let (from, to) = (self.corners[i], self.corners[(i + 1) % 3]);
            let side = to - from;
            side.perp(&(at - from)) >= -REACH * side.norm()
        });
        inside.then(|| self.depth + self.slope.dot(&at.coords))
    }

    /// The part of the edge from `a` to `b` that lies behind, as fractions of its length.
    pub fn hides(&self, a: Point3, b: Point3) -> Option<(f64, f64)> {
        let mut range = (0.0, 1.0);
        for i in 0..3 {
            let (from, to) = (self.corners[i], self.corners[(i + 1) % 3]);
            let side = to - from;
            let length = side.norm();
            let inside = |p: Point3| side.perp(&(p.xy() - from)) / length + REACH;
            range = keep_positive(range, inside(a), inside(b))?;
        }
        let in_front = |p: Point3| self.depth + self.slope.dot(&p.xy().coords) - p.z - NEARER;
        keep_positive(range, in_front(a), in_front(b))
    }
}

/// Where within a range a linear function is positive that has these values at 0 and 1.
fn keep_positive((low, high): (f64, f64), at_0: f64, at_1: f64) -> Option<(f64, f64)> {
    let (mut low, mut high) = (low, high);
    if at_0 <= 0.0 && at_1 <= 0.0 {
        return None;
    }
    if at_0 < 0.0 {
        low = low.max(at_0 / (at_0 - at_1));
    } else if at_1 < 0.0 {
        high = high.min(at_0 / (at_0 - at_1));
    }
    (low < high).then_some((low, high))
}

/// The pieces of an edge that are still seen, as fractions of its length, in order.
#[derive(Clone, Debug)]
pub(super) struct Seen(pub Vec<(f64, f64)>);

impl Seen {
    pub fn whole() -> Self {
        Self(vec![(0.0, 1.0)])
    }

    /// The rest of the edge: the pieces that are hidden, in order.
    pub fn hidden(&self) -> Vec<(f64, f64)> {
        let starts = std::iter::once(0.0).chain(self.0.iter().map(|piece| piece.1));
        let ends = self.0.iter().map(|piece| piece.0).chain([1.0]);
        starts.zip(ends).filter(|(a, b)| a < b).collect()
    }

    /// Takes a hidden range away.
    pub fn hide(&mut self, (from, to): (f64, f64)) {
        let touched = |&(a, b): &(f64, f64)| from < b && to > a;
        if !self.0.iter().any(touched) {
            return;
        }
        let mut left = Vec::with_capacity(self.0.len() + 1);
        for &(a, b) in &self.0 {
            if from >= b || to <= a {
                left.push((a, b));
                continue;
            }
            left.extend([(a, from), (to, b)].into_iter().filter(|(x, y)| x < y));
        }
        self.0 = left;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn triangle(z: f64) -> Occluder {
        let corners = [(0.0, 0.0), (10.0, 0.0), (0.0, 10.0)].map(|(x, y)| Point3::new(x, y, z));
        Occluder::new(corners).unwrap()
    }

    #[test]
    fn a_nearer_triangle_hides_what_crosses_it() {
        // At y = 2 the triangle reaches from x = 0 to 8; the edge from -2 to 18 is 20 long: 0.1 to 0.5.
        let (a, b) = (Point3::new(-2.0, 2.0, 0.0), Point3::new(18.0, 2.0, 0.0));
        let (from, to) = triangle(5.0).hides(a, b).unwrap();
        assert!((from - 0.1).abs() < 1e-4 && (to - 0.5).abs() < 1e-4);
        assert_eq!(triangle(-5.0).hides(a, b), None);
        assert_eq!(triangle(0.0).hides(a, b), None, "touching does not hide");
    }

    #[test]
    fn an_edge_that_pierces_the_triangle_is_hidden_only_behind_it() {
        // Depth runs from -5 to 5 over x = 0..8 at y = 1; it passes the triangle's depth 0 half way.
        let (a, b) = (Point3::new(0.0, 1.0, -5.0), Point3::new(8.0, 1.0, 5.0));
        let (from, to) = triangle(0.0).hides(a, b).unwrap();
        assert!(
            from.abs() < 1e-9 && (to - 0.498).abs() < 1e-6,
            "{from} {to}"
        );
    }

    #[test]
    fn a_triangle_turned_away_hides_nothing() {
        let corners = [(0.0, 0.0), (0.0, 10.0), (10.0, 0.0)].map(|(x, y)| Point3::new(x, y, 1.0));
        assert!(Occluder::new(corners).is_none());
    }

    #[test]
    fn hidden_ranges_leave_the_rest() {
        let mut seen = Seen::whole();
        seen.hide((0.2, 0.4));
        seen.hide((0.3, 0.5));
        seen.hide((0.9, 1.5));
        assert_eq!(seen.0, [(0.0, 0.2), (0.5, 0.9)]);
        seen.hide((-1.0, 2.0));
        assert!(seen.0.is_empty());
    }

    #[test]
    fn seen_and_hidden_pieces_make_up_the_edge() {
        let mut seen = Seen::whole();
        assert!(seen.hidden().is_empty());
        seen.hide((0.2, 0.4));
        seen.hide((0.9, 1.5));
        assert_eq!(seen.hidden(), [(0.2, 0.4), (0.9, 1.0)]);
        seen.hide((-1.0, 2.0));
        assert_eq!(seen.hidden(), [(0.0, 1.0)]);
    }
}
