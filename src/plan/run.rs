//! Runs laid out along the chain.

use crate::geometry::{Bounds2, Point2, Vector2};

/// A run laid out. Its own coordinates are u along it from its left end and v away from its working face.
#[derive(Clone, Debug, PartialEq)]
pub struct RunPlan {
    /// Where u = 0, v = 0 is in the world.
    pub origin: Point2,
    /// The direction of u, a unit vector.
    pub along: Vector2,
    /// The direction of v, a unit vector, a quarter turn to the left of `along`.
    pub away: Vector2,
    /// Overall, corner squares included.
    pub length: f64,
    /// Working face to seating face.
    pub depth: f64,
    /// Where its own frame begins and ends along u: a butting run stops at the face of the run that passes.
    pub framed: (f64, f64),
}

impl RunPlan {
    /// The world point at (u, v).
    pub fn point(&self, u: f64, v: f64) -> Point2 {
        self.origin + self.along * u + self.away * v
    }

    /// The run's own coordinates (u, v) of a world point.
    pub fn local(&self, point: Point2) -> Point2 {
        let from = point - self.origin;
        Point2::new(from.dot(&self.along), from.dot(&self.away))
    }

    /// The motion from the run's own coordinates to the world.
    pub fn motion(&self) -> nalgebra::Isometry2<f64> {
        nalgebra::Isometry2::new(self.origin.coords, self.along.y.atan2(self.along.x))
    }

    /// The world rectangle of a rectangle of the run's own.
    pub fn rectangle(&self, u: (f64, f64), v: (f64, f64)) -> Bounds2 {
        let (a, b) = (self.point(u.0, v.0), self.point(u.1, v.1));
        Bounds2 {
            low: a.inf(&b),
            high: a.sup(&b),
        }
    }

    /// The world rectangle of the whole run.
    pub fn bounds(&self) -> Bounds2 {
        self.rectangle((0.0, self.length), (0.0, self.depth))
    }
}
