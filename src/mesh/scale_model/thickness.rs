//! How thin a solid is, measured on its triangles.

use crate::geometry::{Faceted, Point3, Vector3};

/// A ray that meets its own surface nearer than this has not left it, millimetres.
const OWN: f64 = 1e-6;

/// Two sides of a wall face apart within 45 degrees; what meets at a sharper angle is an edge, and no wall: the cosine.
const APART: f64 = std::f64::consts::FRAC_1_SQRT_2;

/// A triangle with its outward direction.
struct Side {
    corners: [Point3; 3],
    outward: Vector3,
}

/// The shortest way through a wall, straight inwards from the middle of each triangle, millimetres; infinite without a wall.
pub(super) fn thinnest(surface: &Faceted) -> f64 {
    let sides = surface.triangles.iter().filter_map(|t| {
        let corners = surface.corners(t);
        let [a, b, c] = corners;
        let outward = (b - a).cross(&(c - a)).try_normalize(0.0)?;
        Some(Side { corners, outward })
    });
    let sides: Vec<_> = sides.collect();
    let mut shortest = f64::INFINITY;
    for side in &sides {
        let [a, b, c] = side.corners.map(|p| p.coords);
        let from = Point3::from((a + b + c) / 3.0);
        for other in &sides {
            if let Some(far) = other.left_by(from, -side.outward, shortest) {
                shortest = far;
            }
        }
    }
    shortest
}

impl Side {
    /// How far a ray goes to leave the solid through this triangle, when that is nearer than `most`.
    fn left_by(&self, from: Point3, along: Vector3, most: f64) -> Option<f64> {
        let facing = self.outward.dot(&along);
        if facing < APART {
            return None;
        }
        let far = self.outward.dot(&(self.corners[0] - from)) / facing;
        if far <= OWN || far >= most {
            return None;
        }
        let at = from + along * far;
        let [a, b, c] = self.corners;
        let is_left = |p: Point3, q: Point3| (q - p).cross(&(at - p)).dot(&self.outward) >= -1e-9;
        (is_left(a, b) && is_left(b, c) && is_left(c, a)).then_some(far)
    }
}
