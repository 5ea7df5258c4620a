//! What a boundary representation is made of.

use crate::geometry::{Point3, Vector3};

/// A solid bounded by exact faces.
///
/// Invariant: every edge bounds two faces, which run along it in opposite directions; the edges of a bound follow one
/// another; every point lies on the surfaces of the faces that it is a corner of. Made by [`crate::geometry::Solid::boundary`].
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Boundary {
    /// The corners, none twice.
    pub points: Vec<Point3>,
    /// The edges.
    pub edges: Vec<Edge>,
    /// The faces.
    pub faces: Vec<Face>,
}

/// A curve between two corners.
#[derive(Clone, Debug, PartialEq)]
pub struct Edge {
    /// Numbers of the corners where it starts and ends.
    pub ends: [usize; 2],
    /// Its shape.
    pub curve: Curve,
}

/// The shape of an edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Curve {
    /// Straight.
    Line,
    /// A part of a circle or of an ellipse.
    Oval(Oval),
}

/// A circle or an ellipse: the points `centre + first cos t + second sin t`, travelled as t grows.
///
/// Invariant: `first` and `second` are square to each other, `first` is not the shorter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Oval {
    /// Its middle.
    pub centre: Point3,
    /// The longer half axis, millimetres.
    pub first: Vector3,
    /// The shorter half axis, millimetres.
    pub second: Vector3,
}

/// An edge as a bound runs along it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Along {
    /// Number of the edge.
    pub edge: usize,
    /// From its start to its end.
    pub forwards: bool,
}

/// A piece of a surface.
#[derive(Clone, Debug, PartialEq)]
pub struct Face {
    /// What it lies on.
    pub surface: Surface,
    /// True when the surface's own normal points out of the solid.
    pub outward: bool,
    /// Its bounds, the outer one first: counter-clockwise as they are seen from outside the solid, holes clockwise.
    pub bounds: Vec<Vec<Along>>,
}

/// A place with two directions, unit vectors square to each other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Axes {
    /// The place.
    pub origin: Point3,
    /// The main direction: a plane's normal, the axis of what is turned.
    pub z: Vector3,
    /// The direction from which angles about the axis are measured.
    pub x: Vector3,
}

/// What a face lies on. Normals point away from axes, centres and centre lines.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Surface {
    /// Through the origin, square to z, which is its normal.
    Plane(Axes),
    /// At a distance from the axis.
    Cylinder {
        /// The axis.
        axes: Axes,
        /// The distance, millimetres.
        radius: f64,
    },
    /// Widening along the axis.
    Cone {
        /// The axis.
        axes: Axes,
        /// The radius at the origin, millimetres.
        radius: f64,
        /// Between the axis and the surface, radians, more than none and less than a right angle.
        half_angle: f64,
    },
    /// At a distance from a point.
    Sphere {
        /// The middle and the directions of its poles.
        axes: Axes,
        /// The distance, millimetres.
        radius: f64,
    },
    /// At a distance from a circle about the axis.
    Torus {
        /// The axis.
        axes: Axes,
        /// The circle's radius, millimetres, not less than the tube's.
        radius: f64,
        /// The distance, millimetres.
        tube: f64,
    },
    /// A circle turned about an axis that it crosses: a torus that meets itself, of which faces use one side only.
    Spindle {
        /// The axis.
        axes: Axes,
        /// How far the circle's middle stands from the axis towards x, millimetres; negative beyond it.
        radius: f64,
        /// The circle's radius, millimetres.
        tube: f64,
    },
}

impl Along {
    /// The same edge the other way.
    pub fn back(self) -> Self {
        Self {
            forwards: !self.forwards,
            ..self
        }
    }
}

impl Axes {
    /// The third direction.
    pub fn y(&self) -> Vector3 {
        self.z.cross(&self.x)
    }
}

impl Oval {
    /// True for a circle.
    pub fn is_circle(&self) -> bool {
        let (a, b) = (self.first.norm(), self.second.norm());
        (a - b).abs() <= 1e-12 * a.max(b)
    }

    /// The angle at which a point of it stands.
    pub fn angle(&self, point: Point3) -> f64 {
        let spoke = point - self.centre;
        let share = |axis: Vector3| spoke.dot(&axis) / axis.norm_squared();
        share(self.second).atan2(share(self.first))
    }
}

impl Boundary {
    /// Where a bound starts on an edge, and where it ends.
    pub fn ends(&self, along: Along) -> Option<[usize; 2]> {
        let [from, to] = self.edges.get(along.edge)?.ends;
        Some(if along.forwards {
            [from, to]
        } else {
            [to, from]
        })
    }
}
