//! Runs laid out along the chain.

use crate::geometry::{Point2, Vector2};

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

    /// The motion from the run's own coordinates to the world.
    pub fn motion(&self) -> nalgebra::Isometry2<f64> {
        nalgebra::Isometry2::new(self.origin.coords, self.along.y.atan2(self.along.x))
    }
}
