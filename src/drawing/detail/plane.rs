//! The planes that details are cut in: views whose z = 0 is the plane, the eye on the side of positive z.

use crate::drawing::hidden::View;
use crate::geometry::{Point2, Point3, Vector2, Vector3};
use crate::plan::Face;

fn flat(v: Vector2) -> Vector3 {
    Vector3::new(v.x, v.y, 0.0)
}

fn at(point: Point2, height: f64) -> Point3 {
    Point3::new(point.x, point.y, height)
}

/// Upright and square to a face at s: x is inwards from the frame's face, the outside to the left; y the height.
pub(super) fn across(face: &Face, s: f64) -> View {
    View::onto(
        at(face.point(s, 0.0), 0.0),
        flat(-face.outward),
        Vector3::z(),
    )
}

/// Level at a height, seen from above: x is s along a face, y inwards from the frame's face.
pub(super) fn level(face: &Face, z: f64) -> View {
    View::onto(at(face.start, z), flat(face.along), flat(-face.outward))
}

/// Along a face, so far inwards from the frame's face, seen from outside: x is s, y the height.
pub(super) fn along(face: &Face, inwards: f64) -> View {
    View::onto(
        at(face.point(0.0, -inwards), 0.0),
        flat(face.along),
        Vector3::z(),
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::{Side, sample};

    #[test]
    fn outside_is_left_of_an_upright_cut_and_below_a_level_one() {
        let design = sample::design(vec![sample::run("cook", 3000.0, None, &[])]);
        let plan = crate::plan::lay_out(design).unwrap();
        let close = |a: Point3, b: [f64; 3]| assert!((a - Point3::from(b)).norm() < 1e-9, "{a}");
        // A working face looks towards -y: 20 before it, 300 along it, 500 up.
        let face = plan.faces.iter().find(|f| f.side == Side::Working).unwrap();
        let point = Point3::new(300.0, -20.0, 500.0);
        close(across(face, 250.0).point(point), [-20.0, 500.0, 50.0]);
        close(level(face, 450.0).point(point), [300.0, -20.0, 50.0]);
        close(along(face, 40.0).point(point), [300.0, 500.0, 60.0]);
        // The right end looks towards +x and is as deep as the run; s runs away from the cook.
        let end = plan.faces.iter().find(|f| f.side == Side::Right).unwrap();
        let point = Point3::new(3020.0, 300.0, 500.0);
        close(across(end, 250.0).point(point), [-20.0, 500.0, 50.0]);
        close(level(end, 450.0).point(point), [300.0, -20.0, 50.0]);
    }
}
