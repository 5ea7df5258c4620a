//! Faces: the outer sides of the frame, in order round the island.

use super::Sizes;
use super::columns::COLLAR;
use crate::design::{OpeningKind, Side};
use crate::geometry::{Outline, Placement, Point2, Vector2};

/// How the island's outline turns where a face begins.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Corner {
    /// Outwards.
    Convex,
    /// Inwards, as where two runs meet.
    Reflex,
}

/// One outer side of the frame. Its own coordinates are s along it, left to right as seen from outside, and z above
/// the datum. Depths behind it are measured inwards.
#[derive(Clone, Debug, PartialEq)]
pub struct Face {
    /// Number of the run it belongs to.
    pub run: usize,
    /// Which side of that run.
    pub side: Side,
    /// The letters its part marks begin with, such as `CW` for the cook run's working face.
    pub mark: String,
    /// Its name on drawings, such as `cook run, working side`.
    pub name: String,
    /// Where s = 0 is.
    pub start: Point2,
    /// The direction of s, a unit vector.
    pub along: Vector2,
    /// The direction out of the island, a unit vector.
    pub outward: Vector2,
    /// From its first corner to its last.
    pub length: f64,
    /// True when it stands against a wall: no cladding, no overhang.
    pub wall: bool,
    /// The corner where it begins.
    pub corner: Corner,
    /// Holes through its cladding, the open fronts of appliances included.
    pub openings: Vec<FaceOpening>,
}

/// A hole through a face, in the face's coordinates, millimetres.
#[derive(Clone, Debug, PartialEq)]
pub struct FaceOpening {
    /// Its name in the file.
    pub name: String,
    /// What it is; `None` for the open front of an appliance.
    pub kind: Option<OpeningKind>,
    /// Number of the opening, or of the appliance whose front it is, in the design.
    pub index: usize,
    /// Left edge.
    pub s0: f64,
    /// Right edge.
    pub s1: f64,
    /// Lower edge.
    pub z0: f64,
    /// Upper edge; the top of the frame for an open front.
    pub z1: f64,
}

impl FaceOpening {
    /// True when it has jambs, header and sill; a vent or box that fits between two studs is only cut through the board.
    pub fn is_framed(&self, sizes: &Sizes) -> bool {
        let fits = self.s1 - self.s0 <= sizes.spacing - sizes.stud_flange - 2.0 * COLLAR;
        self.kind.is_none_or(|kind| kind.is_framed() || !fits)
    }

    /// Its outline in the face's coordinates (s, z).
    pub fn outline(&self) -> Outline {
        Outline::rectangle(self.s0, self.z0, self.s1, self.z1)
    }
}

/// A strip of steel that a board can be screwed to, in a face's coordinates, millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Steel {
    /// Left edge.
    pub s0: f64,
    /// Right edge.
    pub s1: f64,
    /// Lower end.
    pub z0: f64,
    /// Upper end.
    pub z1: f64,
    /// True for a stud, jamb or cripple; false for a track, header, sill or blocking.
    pub upright: bool,
}

impl Face {
    /// The world point at s along the face and `out` in front of it.
    pub fn point(&self, s: f64, out: f64) -> Point2 {
        self.start + self.along * s + self.outward * out
    }

    /// The corner where it begins when the face before it is moved out by so much and this one by `out`: where the two
    /// moved lines meet. Moved by nothing, the corner itself.
    pub fn moved_out(&self, (before, before_out): (&Self, f64), out: f64) -> Point2 {
        let between = before.outward.dot(&self.outward);
        let square = 1.0 - between * between;
        self.start
            + self.outward * ((out - before_out * between) / square)
            + before.outward * ((before_out - out * between) / square)
    }

    /// Sine and cosine of the angle by which the outline turns from this face to the next.
    pub fn turn_to(&self, next: &Self) -> (f64, f64) {
        (self.along.perp(&next.along), self.along.dot(&next.along))
    }

    /// The placement of the face's own coordinates: x along s, y into the island, z up, the origin at s = 0 and the
    /// datum.
    pub fn placement(&self) -> Placement {
        let angle = self.along.y.atan2(self.along.x);
        Placement::new(
            nalgebra::Vector3::new(self.start.x, self.start.y, 0.0),
            nalgebra::Vector3::z() * angle,
        )
    }

    /// The placement of a plate that stands in front of the face: x along s, y up, z out of the island, the origin at
    /// (s, z) and `out` in front of the frame.
    pub fn plate(&self, s: f64, z: f64, out: f64) -> Placement {
        let upright = nalgebra::UnitQuaternion::from_axis_angle(
            &nalgebra::Vector3::x_axis(),
            std::f64::consts::FRAC_PI_2,
        );
        let turned = self.placement().rotation * upright;
        let at = self.point(s, out);
        Placement::from_parts(nalgebra::Translation3::new(at.x, at.y, z), turned)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::{Point3, Vector3};

    #[test]
    fn a_plate_stands_upright_in_front_of_its_face() {
        // A right end: s runs away from the cook (+y), outwards is +x.
        let face = Face {
            run: 0,
            side: Side::Right,
            mark: String::new(),
            name: String::new(),
            start: Point2::new(1000.0, 0.0),
            along: Vector2::y(),
            outward: Vector2::x(),
            length: 700.0,
            wall: false,
            corner: Corner::Convex,
            openings: Vec::new(),
        };
        let plate = face.plate(100.0, 50.0, 12.0);
        let close = |p: Point3, q: Point3| (p - q).norm() < 1e-9;
        assert!(close(
            plate * Point3::origin(),
            Point3::new(1012.0, 100.0, 50.0)
        ));
        assert!(close(
            plate * Point3::new(10.0, 0.0, 0.0),
            Point3::new(1012.0, 110.0, 50.0)
        ));
        assert!(close(
            plate * Point3::new(0.0, 10.0, 0.0),
            Point3::new(1012.0, 100.0, 60.0)
        ));
        assert!((plate * Vector3::z() - Vector3::x()).norm() < 1e-9);
    }
}
