//! The planes in which sections are cut.

use crate::drawing::hidden::View;
use crate::geometry::{Point3, Vector2, Vector3};
use crate::plan::RunPlan;

/// A vertical plane across a run at `u`, seen looking towards the run's right end: the working side is on the right.
///
/// In the view x is −v (v: away from the working face of the frame), y the height above the datum, and z 0 in the plane,
/// growing towards the eye.
pub fn across(run: &RunPlan, u: f64) -> View {
    let at = run.point(u, 0.0);
    View::onto(Point3::new(at.x, at.y, 0.0), level(-run.away), Vector3::z())
}

fn level(v: Vector2) -> Vector3 {
    Vector3::new(v.x, v.y, 0.0)
}
