//! Surfaces of turned sides, and how far a point is from a surface.

use super::{Axes, Surface};
use crate::geometry::{Point3, Segment, Vector2, Vector3};

/// How a side is turned about an axis: its x is the distance from it, its y the height along it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Turn {
    /// A point of the axis at height 0.
    pub origin: Point3,
    /// The direction of the axis.
    pub axis: Vector3,
    /// From the axis towards the middle of the turn.
    pub middle: Vector3,
}

impl Turn {
    fn axes(&self, height: f64) -> Axes {
        // Angles are measured from opposite the turned piece, so that it does not lie across their start.
        Axes {
            origin: self.origin + self.axis * height,
            z: self.axis,
            x: -self.middle,
        }
    }

    /// The surface of a side, and whether its normal points to the right of the side's travel, as distance and height
    /// are drawn right and up.
    pub fn surface(&self, side: &Segment) -> (Surface, bool) {
        let Some(arc) = side.arc() else {
            return self.straight(side);
        };
        let (axes, tube) = (self.axes(arc.centre.y), arc.radius);
        let radius = arc.centre.x;
        let surface = if radius.abs() < 1e-9 * tube.max(1.0) {
            Surface::Sphere { axes, radius: tube }
        } else if radius < tube {
            Surface::Spindle {
                axes: Axes {
                    x: self.middle,
                    ..axes
                },
                radius,
                tube,
            }
        } else {
            Surface::Torus { axes, radius, tube }
        };
        (surface, arc.sweep > 0.0)
    }

    fn straight(&self, side: &Segment) -> (Surface, bool) {
        let run = side.to - side.from;
        let small = 1e-12 * run.norm();
        let axes = self.axes(side.from.y);
        if run.y.abs() <= small {
            let z = self.axis * -run.x.signum();
            return (Surface::Plane(Axes { z, ..axes }), true);
        }
        let radius = side.from.x;
        if run.x.abs() <= small {
            return (Surface::Cylinder { axes, radius }, run.y > 0.0);
        }
        // A cone is told at its wider end, for at its point it has no radius.
        let wide = if side.from.x > side.to.x {
            side.from
        } else {
            side.to
        };
        let surface = Surface::Cone {
            axes: Axes {
                z: self.axis * (run.x * run.y).signum(),
                ..self.axes(wide.y)
            },
            radius: wide.x,
            half_angle: run.x.abs().atan2(run.y.abs()),
        };
        (surface, run.y > 0.0)
    }
}

impl Surface {
    /// How far a point is from it, millimetres.
    pub(super) fn distance(&self, point: Point3) -> f64 {
        let from = |axes: &Axes| {
            let spoke = point - axes.origin;
            let height = spoke.dot(&axes.z);
            Vector2::new((spoke - axes.z * height).norm(), height)
        };
        let off = match self {
            Self::Plane(axes) => from(axes).y,
            Self::Cylinder { axes, radius } => from(axes).x - radius,
            Self::Cone {
                axes,
                radius,
                half_angle,
            } => {
                let at = from(axes);
                (at.x - radius) * half_angle.cos() - at.y * half_angle.sin()
            }
            Self::Sphere { axes, radius } => from(axes).norm() - radius,
            Self::Torus { axes, radius, tube } | Self::Spindle { axes, radius, tube } => {
                (from(axes) - Vector2::new(*radius, 0.0)).norm() - tube
            }
        };
        off.abs()
    }
}
