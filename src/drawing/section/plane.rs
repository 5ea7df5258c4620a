//! The planes in which the island is cut.

use crate::drawing::hidden::View;
use crate::geometry::{Point3, Vector2, Vector3};
use crate::plan::{Face, RunPlan};

/// A vertical plane across a run at `u`, seen looking towards the run's right end: the working side is on the right.
///
/// In the view x is −v (v: away from the working face of the frame), y the height above the datum, and z 0 in the plane,
/// growing towards the eye.
pub fn across(run: &RunPlan, u: f64) -> View {
    let at = run.point(u, 0.0);
    View::onto(Point3::new(at.x, at.y, 0.0), level(-run.away), Vector3::z())
}

/// A level plane at height `z`, seen from above: x and y of the view are the world's.
pub fn level_at(z: f64) -> View {
    View::onto(Point3::new(0.0, 0.0, z), Vector3::x(), Vector3::y())
}

/// A vertical plane along a face, `depth` behind the plane of the frame, seen from outside: x is s along the face, y the
/// height above the datum.
pub fn behind_face(face: &Face, depth: f64) -> View {
    let at = face.point(0.0, -depth);
    View::onto(
        Point3::new(at.x, at.y, 0.0),
        level(face.along),
        Vector3::z(),
    )
}

fn level(v: Vector2) -> Vector3 {
    Vector3::new(v.x, v.y, 0.0)
}
