//! Placing a member by the directions of its axes.

use crate::geometry::{Placement, Point2, Vector2, Vector3};
use nalgebra::{Rotation3, Translation3, UnitQuaternion};

/// A placement with the member's own origin at a point and height, its x and z along two perpendicular directions.
pub(super) fn stand(at: Point2, height: f64, x: Vector3, z: Vector3) -> Placement {
    let rotation = Rotation3::from_basis_unchecked(&[x, z.cross(&x), z]);
    Placement::from_parts(
        Translation3::new(at.x, at.y, height),
        UnitQuaternion::from_rotation_matrix(&rotation),
    )
}

/// A direction of the plan as one in space.
pub(super) fn level(direction: Vector2) -> Vector3 {
    Vector3::new(direction.x, direction.y, 0.0)
}
