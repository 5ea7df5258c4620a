//! How an orthographic view stands to the island.

use crate::geometry::{Placement, Point3, Vector2, Vector3};
use crate::plan::Face;
use nalgebra::{Matrix3, Rotation3, Translation3, UnitQuaternion};

/// An orthographic view: the motion from the world to x across, y up the sheet, z towards the eye.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct View(Placement);

/// Which two walls of a box an axonometric view shows beside its top: where its eye is, seen from above.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Corner {
    /// The eye stands on the side of larger x.
    pub right: bool,
    /// The eye stands on the side of larger y.
    pub back: bool,
}

impl Corner {
    /// All four.
    pub const ALL: [Self; 4] = [
        Self {
            right: false,
            back: false,
        },
        Self {
            right: true,
            back: false,
        },
        Self {
            right: true,
            back: true,
        },
        Self {
            right: false,
            back: true,
        },
    ];

    fn sign(positive: bool) -> f64 {
        if positive { 1.0 } else { -1.0 }
    }
}

impl View {
    /// The island from above, world x across and world y up the sheet.
    pub fn from_above() -> Self {
        Self(Placement::identity())
    }

    /// What one sees standing in front of a face: x is s along the face, y the height above the datum, z the distance
    /// in front of the face.
    pub fn of_face(face: &Face) -> Self {
        let flat = |v: Vector2| Vector3::new(v.x, v.y, 0.0);
        let axes = Matrix3::from_columns(&[flat(face.along), Vector3::z(), flat(face.outward)]);
        let turn = UnitQuaternion::from_rotation_matrix(&Rotation3::from_matrix_unchecked(axes));
        let shift = Translation3::new(face.start.x, face.start.y, 0.0);
        Self(Placement::from_parts(shift, turn).inverse())
    }

    /// What one sees looking at a plane: its point `origin` is the view's, `across` points to the right and `up` up the
    /// sheet. Both are unit vectors square to each other.
    pub fn onto(origin: Point3, across: Vector3, up: Vector3) -> Self {
        let axes = Matrix3::from_columns(&[across, up, across.cross(&up)]);
        let turn = UnitQuaternion::from_rotation_matrix(&Rotation3::from_matrix_unchecked(axes));
        Self(Placement::from_parts(Translation3::from(origin.coords), turn).inverse())
    }

    /// What an eye far away sees in whose direction `eye` points; the world's z runs up the sheet, or its y where one
    /// looks along z. A direction of no length is taken for straight from above.
    pub fn from_direction(eye: Vector3) -> Self {
        let towards = eye.try_normalize(1e-9).unwrap_or_else(Vector3::z);
        let across = Vector3::z().cross(&towards);
        let across = across.try_normalize(1e-9).unwrap_or_else(Vector3::x);
        let axes = Matrix3::from_columns(&[across, towards.cross(&across), towards]);
        let turn = UnitQuaternion::from_rotation_matrix(&Rotation3::from_matrix_unchecked(axes));
        Self(Placement::from_parts(Translation3::identity(), turn).inverse())
    }

    /// The isometric view after ISO 5456-3: x, y and z are shortened alike and stand 120 degrees apart.
    pub fn isometric(corner: Corner) -> Self {
        let (x, y) = (Corner::sign(corner.right), Corner::sign(corner.back));
        Self::from_direction(Vector3::new(x, y, 1.0))
    }

    /// The dimetric view after ISO 5456-3: two axes are shortened alike, the one that recedes twice as much. World y
    /// recedes, or x where `along_y`. The axes stand about 7 and 42 degrees to the level.
    pub fn dimetric(corner: Corner, along_y: bool) -> Self {
        let far = 7.0_f64.sqrt();
        let (x, y) = if along_y { (far, 1.0) } else { (1.0, far) };
        let (sx, sy) = (Corner::sign(corner.right), Corner::sign(corner.back));
        Self::from_direction(Vector3::new(sx * x, sy * y, 1.0))
    }

    /// How long a millimetre along the world's x, y and z is in the view.
    pub fn shortening(&self) -> [f64; 3] {
        [Vector3::x(), Vector3::y(), Vector3::z()].map(|axis| (self.0 * axis).xy().norm())
    }

    /// The motion itself.
    pub fn motion(&self) -> &Placement {
        &self.0
    }

    /// The motion from a part's own coordinates to the view.
    pub fn of_part(&self, placement: &Placement) -> Placement {
        self.0 * placement
    }

    /// A world point in the view.
    pub fn point(&self, at: Point3) -> Point3 {
        self.0 * at
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Point2;

    /// The angle of a world axis to the level, degrees.
    fn slope(view: &View, axis: Vector3) -> f64 {
        let along = (view.motion() * axis).xy();
        (along.y.abs()).atan2(along.x.abs()).to_degrees()
    }

    #[test]
    fn the_isometric_axes_are_those_of_iso_5456_3() {
        for corner in Corner::ALL {
            let view = View::isometric(corner);
            // All three in the ratio 1 : 1 : 1; projected they are shortened to the root of 2/3.
            for factor in view.shortening() {
                assert!((factor - (2.0_f64 / 3.0).sqrt()).abs() < 1e-12);
            }
            assert!((slope(&view, Vector3::x()) - 30.0).abs() < 1e-9);
            assert!((slope(&view, Vector3::y()) - 30.0).abs() < 1e-9);
            assert!((slope(&view, Vector3::z()) - 90.0).abs() < 1e-9);
        }
    }

    #[test]
    fn the_dimetric_axes_are_those_of_iso_5456_3() {
        for corner in Corner::ALL {
            let view = View::dimetric(corner, false);
            // 1 : 1/2 : 1, at 7 and 42 degrees: exactly 7 degrees 11 minutes and 41 degrees 25 minutes.
            let [x, y, z] = view.shortening();
            assert!((x - z).abs() < 1e-12 && (y / x - 0.5).abs() < 1e-12);
            assert!((slope(&view, Vector3::x()) - (7.0 + 11.0 / 60.0)).abs() < 0.01);
            assert!((slope(&view, Vector3::y()) - (41.0 + 25.0 / 60.0)).abs() < 0.01);
            let turned = View::dimetric(corner, true).shortening();
            assert!((turned[0] - y).abs() < 1e-12 && (turned[1] - x).abs() < 1e-12);
        }
    }

    #[test]
    fn what_is_nearer_to_the_eye_has_the_larger_z_and_up_stays_up() {
        let corner = Corner {
            right: true,
            back: false,
        };
        let view = View::isometric(corner);
        let origin = view.point(Point3::origin());
        for (nearer, axis) in [
            (1.0, Vector3::x()),
            (-1.0, Vector3::y()),
            (1.0, Vector3::z()),
        ] {
            assert!(view.point(Point3::from(axis * nearer)).z > origin.z);
        }
        assert!(view.point(Point3::new(0.0, 0.0, 1.0)).y > origin.y);
        let above = View::from_direction(Vector3::z());
        let p = above.point(Point3::new(3.0, 4.0, 5.0));
        assert!((p - Point3::new(3.0, 4.0, 5.0)).norm() < 1e-12);
    }

    #[test]
    fn the_view_of_a_face_runs_left_to_right_as_seen_from_outside() {
        // A seating face: its outside looks along +y, so that s runs along -x.
        let face = Face {
            run: 0,
            side: crate::design::Side::Seating,
            mark: "CS".into(),
            name: String::new(),
            start: Point2::new(3000.0, 800.0),
            along: Vector2::new(-1.0, 0.0),
            outward: Vector2::new(0.0, 1.0),
            length: 3000.0,
            wall: false,
            corner: crate::plan::Corner::Convex,
            openings: Vec::new(),
        };
        let p = View::of_face(&face).point(Point3::new(2900.0, 850.0, 700.0));
        assert!((p - Point3::new(100.0, 700.0, 50.0)).norm() < 1e-9);
    }
}
