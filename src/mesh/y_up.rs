//! From the island's millimetres with z up to metres with y up, as viewers have it.
//!
//! x stays, z becomes y, and what was away from the cook of the first run (y) becomes −z: a quarter turn about x, never a mirror.

use crate::geometry::{Placement, Point3, Vector3};
use nalgebra::UnitQuaternion;
use std::f64::consts::FRAC_PI_2;

/// A place turned to y up, metres: first turned, then moved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UprightPlace {
    /// Moved by so much.
    pub translation: [f32; 3],
    /// Turned by this unit quaternion: x, y, z, w, with w not negative.
    pub rotation: [f32; 4],
}

impl UprightPlace {
    /// A place of the island.
    pub fn of(placement: &Placement) -> Self {
        let q = placement.rotation.quaternion();
        Self {
            translation: point(&placement.translation.vector.into()),
            rotation: with_positive_w([q.i, q.k, -q.j, q.w]),
        }
    }

    /// The place of a camera, whose own axes are those of the format already: it looks along −z, its y is up.
    pub fn of_camera(placement: &Placement) -> Self {
        let world = UnitQuaternion::from_axis_angle(&Vector3::x_axis(), -FRAC_PI_2);
        let turned = world * placement.rotation;
        let q = turned.quaternion();
        Self {
            translation: point(&placement.translation.vector.into()),
            rotation: with_positive_w([q.i, q.j, q.k, q.w]),
        }
    }
}

/// The one of the two quaternions of a turn whose last part is not negative.
fn with_positive_w(parts: [f64; 4]) -> [f32; 4] {
    let sign = if parts[3] < 0.0 { -1.0 } else { 1.0 };
    parts.map(|part| tidy(part * sign))
}

/// A point in metres.
pub fn point(at: &Point3) -> [f32; 3] {
    [at.x, at.z, -at.y].map(|mm| tidy(mm / 1000.0))
}

/// A direction.
pub fn direction(along: &Vector3) -> [f32; 3] {
    [along.x, along.z, -along.y].map(tidy)
}

/// Single precision; dust of the arithmetic, far below what is ever built, is nothing, and nothing has no sign.
fn tidy(value: f64) -> f32 {
    if value.abs() < 1e-12 {
        0.0
    } else {
        value as f32
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::PI;

    #[test]
    fn up_becomes_y_and_away_becomes_minus_z() {
        assert_eq!(point(&Point3::new(1000.0, 2000.0, 500.0)), [1.0, 0.5, -2.0]);
        assert_eq!(direction(&Vector3::new(0.0, -1.0, 0.0)), [0.0, 0.0, 1.0]);
        assert!(
            point(&Point3::new(-0.0, 0.0, -0.0))
                .iter()
                .all(|c| c.is_sign_positive())
        );
    }

    #[test]
    fn a_placed_point_is_where_the_turned_place_puts_it() {
        let turns = [
            Vector3::new(0.0, 0.0, FRAC_PI_2),
            Vector3::new(PI, 0.0, 0.0),
            Vector3::new(0.3, -1.2, 2.9),
        ];
        for turn in turns {
            let placement = Placement::new(Vector3::new(100.0, -250.0, 40.0), turn);
            let place = UprightPlace::of(&placement);
            let local = Point3::new(12.0, 34.0, 56.0);
            let [i, j, k, w] = place.rotation.map(f64::from);
            let q = UnitQuaternion::from_quaternion(nalgebra::Quaternion::new(w, i, j, k));
            let moved = q * Point3::from(point(&local).map(f64::from))
                + Vector3::from(place.translation.map(f64::from));
            let expected = Point3::from(point(&(placement * local)).map(f64::from));
            assert!((moved - expected).norm() < 1e-7, "{moved} for {expected}");
            assert!(w >= 0.0);
        }
    }

    #[test]
    fn a_camera_that_looks_down_at_the_island_looks_down_in_the_viewer() {
        // Not turned in the island, it looks along −z: down there, and along −y once y is up.
        let place = UprightPlace::of_camera(&Placement::translation(0.0, 0.0, 3000.0));
        let [i, j, k, w] = place.rotation.map(f64::from);
        let q = UnitQuaternion::from_quaternion(nalgebra::Quaternion::new(w, i, j, k));
        assert!((q * -Vector3::z() + Vector3::y()).norm() < 1e-7);
        assert_eq!(place.translation, [0.0, 3.0, 0.0]);
    }
}
