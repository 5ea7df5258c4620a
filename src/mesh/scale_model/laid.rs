//! A piece laid down as it is printed: turned over, so that the slab's top, the base's top and the frame's top lie on the bed.

use super::fit::Room;
use crate::geometry::{Bounds3, Faceted, Placement, Point3, Vector3};
use nalgebra::{Translation3, UnitQuaternion};
use std::f64::consts::{FRAC_PI_2, PI};

/// Undersides flatter than this hang over: cosine of 45 degrees and a little.
const FLAT: f64 = 0.7072;

/// A surface as it is printed, and the motion back to the model.
pub(super) struct Laid {
    pub(super) surface: Faceted,
    pub(super) back: Placement,
}

/// Lays a surface on its top in the corner of the bed, turned by a quarter where it fits only so.
///
/// Corners stay on the grid: they are moved by swapping coordinates, not by a rotation.
pub(super) fn lay(mut surface: Faceted, bounds: &Bounds3, room: &Room) -> Laid {
    let turned = room.is_turned(&(bounds.high - bounds.low));
    let over = |p: &Point3| {
        if turned {
            Point3::new(p.y, p.x, -p.z)
        } else {
            Point3::new(p.x, -p.y, -p.z)
        }
    };
    let (a, b) = (over(&bounds.low), over(&bounds.high));
    let corner = a.inf(&b).coords;
    for point in &mut surface.points {
        *point = over(point) - corner;
    }
    let flipped = UnitQuaternion::from_axis_angle(&Vector3::x_axis(), PI);
    let quarter = if turned {
        UnitQuaternion::from_axis_angle(&Vector3::z_axis(), FRAC_PI_2)
    } else {
        UnitQuaternion::identity()
    };
    let there = Placement::from_parts(Translation3::from(-corner), quarter * flipped);
    Laid {
        surface,
        back: there.inverse(),
    }
}

/// Area of undersides that hang over air, mm².
pub(super) fn over_air(surface: &Faceted) -> f64 {
    let areas = surface.triangles.iter().map(|t| {
        let corners = surface.corners(t);
        let [a, b, c] = corners;
        let across = (b - a).cross(&(c - a));
        let is_on_bed = corners.iter().all(|p| p.z <= 0.0);
        if !is_on_bed && across.z < -FLAT * across.norm() {
            across.norm() / 2.0
        } else {
            0.0
        }
    });
    areas.sum()
}
