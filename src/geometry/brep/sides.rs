//! The sides of outlines, and the curves they become where they are laid in space.

use super::{Axes, Curve, Oval, Surface};
use crate::geometry::{Outline, Point2, Point3, Segment, Vector3};

/// An affine map of the plane into space: how an outline lies there.
#[derive(Clone, Copy, Debug)]
pub(super) struct Lay {
    pub origin: Point3,
    pub x: Vector3,
    pub y: Vector3,
}

impl Lay {
    /// Where a point of the plane comes to lie.
    pub fn at(&self, p: Point2) -> Point3 {
        self.origin + self.x * p.x + self.y * p.y
    }

    /// The curve that a side becomes.
    pub fn curve(&self, side: &Segment) -> Curve {
        let Some(arc) = side.arc() else {
            return Curve::Line;
        };
        // Travelled against the angle, an arc is its mirror image travelled with it.
        let (p, q) = (
            self.x * arc.radius,
            self.y * arc.radius * arc.sweep.signum(),
        );
        let centre = self.at(arc.centre);
        let size = p.norm_squared().max(q.norm_squared());
        if (p.norm_squared() - q.norm_squared()).abs() < 1e-12 * size
            && p.dot(&q).abs() < 1e-12 * size
        {
            return Curve::Oval(Oval {
                centre,
                first: p,
                second: q,
            });
        }
        // The half axes of an ellipse from two conjugate half diameters.
        let turn = (2.0 * p.dot(&q)).atan2(p.norm_squared() - q.norm_squared()) / 2.0;
        let (s, c) = turn.sin_cos();
        Curve::Oval(Oval {
            centre,
            first: p * c + q * s,
            second: q * c - p * s,
        })
    }
}

/// The sides of an outline, in their order or against it.
pub(super) fn sides(outline: &Outline, forwards: bool) -> Vec<Segment> {
    let mut sides: Vec<_> = outline.segments().collect();
    if !forwards {
        sides.reverse();
        for side in &mut sides {
            *side = reversed(side);
        }
    }
    sides
}

/// The same side travelled the other way.
pub(super) fn reversed(side: &Segment) -> Segment {
    Segment {
        from: side.to,
        to: side.from,
        bulge: -side.bulge,
    }
}

/// The sides of a hole against their order, arcs of one circle that follow one another made one.
pub(super) fn hole_sides(outline: &Outline) -> Vec<Segment> {
    let mut sides = sides(outline, false);
    if let Some(start) = (0..sides.len()).find(|i| {
        let before = sides[(i + sides.len() - 1) % sides.len()];
        joined(&before, &sides[*i]).is_none()
    }) {
        sides.rotate_left(start);
    }
    let mut whole: Vec<Segment> = Vec::with_capacity(sides.len());
    for side in sides {
        match whole.last_mut() {
            Some(last) => match joined(last, &side) {
                Some(both) => *last = both,
                None => whole.push(side),
            },
            None => whole.push(side),
        }
    }
    whole
}

/// Two arcs of one circle as one, up to half a turn.
fn joined(a: &Segment, b: &Segment) -> Option<Segment> {
    let (first, second) = (a.arc()?, b.arc()?);
    let sweep = first.sweep + second.sweep;
    let same = (first.centre - second.centre).norm() < 1e-9 * first.radius.max(1.0)
        && (first.radius - second.radius).abs() < 1e-9 * first.radius.max(1.0)
        && first.sweep * second.sweep > 0.0;
    (same && sweep.abs() < std::f64::consts::PI + 1e-9).then(|| Segment {
        from: a.from,
        to: b.to,
        bulge: (sweep / 4.0).tan(),
    })
}

/// Three directions square to each other, right-handed, and where they start.
#[derive(Clone, Copy, Debug)]
pub(super) struct Frame {
    pub origin: Point3,
    pub x: Vector3,
    pub y: Vector3,
    pub z: Vector3,
}

impl Frame {
    /// The world's own.
    pub fn world() -> Self {
        Self {
            origin: Point3::origin(),
            x: Vector3::x(),
            y: Vector3::y(),
            z: Vector3::z(),
        }
    }

    /// How an outline in its xy plane lies, so high along z.
    pub fn lay(&self, height: f64) -> Lay {
        Lay {
            origin: self.origin + self.z * height,
            x: self.x,
            y: self.y,
        }
    }

    /// The surface of a side drawn out along z, and whether its normal points to the right of the side's travel.
    pub fn drawn(&self, side: &Segment) -> (Surface, bool) {
        let lay = self.lay(0.0);
        let Some(arc) = side.arc() else {
            let along = side.to - side.from;
            let size = along.norm();
            let normal = (self.x * along.y - self.y * along.x) / size;
            let axes = Axes {
                origin: lay.at(side.from),
                z: normal,
                x: (self.x * along.x + self.y * along.y) / size,
            };
            return (Surface::Plane(axes), true);
        };
        // Angles are measured from opposite the arc, so that it does not lie across their start.
        let away = arc.centre - side.at(0.5);
        let axes = Axes {
            origin: lay.at(arc.centre),
            z: self.z,
            x: (self.x * away.x + self.y * away.y) / away.norm(),
        };
        let radius = arc.radius;
        (Surface::Cylinder { axes, radius }, arc.sweep > 0.0)
    }
}
