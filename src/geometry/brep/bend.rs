//! The faces of a turned profile.

use super::sewing::{Ring, Sewing};
use super::sides::{Lay, sides};
use super::surfaces::Turn;
use super::{Along, Boundary, Curve, Oval};
use crate::geometry::{Bend, Point3, Vector3};
use std::f64::consts::TAU;

/// The direction at an angle from the x axis.
fn spoke(angle: f64) -> Vector3 {
    Vector3::new(angle.cos(), angle.sin(), 0.0)
}

impl Bend {
    /// See [`crate::geometry::Solid::boundary`].
    pub fn boundary(&self) -> Option<Boundary> {
        let whole = self.angle > TAU - 1e-9;
        if !(self.angle > 0.0 && self.profile.bounds().low.x > 0.0) {
            return None;
        }
        // A full turn is made of two halves: an edge that ends where it starts has no two corners.
        let angles = if whole {
            vec![0.0, TAU / 2.0]
        } else {
            vec![0.0, self.angle]
        };
        let profile = sides(&self.profile, true);
        let mut sewing = Sewing::default();
        let rings: Vec<Ring> = angles
            .iter()
            .map(|a| {
                let lay = Lay {
                    origin: Point3::origin(),
                    x: spoke(*a),
                    y: Vector3::z(),
                };
                sewing.ring(&profile, &lay)
            })
            .collect();
        let [first, last] = <[Ring; 2]>::try_from(rings).ok()?;
        if whole {
            self.patch(&mut sewing, [&first, &last], [0.0, TAU / 2.0]);
            self.patch(&mut sewing, [&last, &first], [TAU / 2.0, TAU / 2.0]);
        } else {
            self.patch(&mut sewing, [&first, &last], [0.0, self.angle]);
            sewing.plane(-turned(0.0), vec![first.bound()])?;
            sewing.plane(turned(self.angle), vec![last.back()])?;
        }
        sewing.finish()
    }

    /// Sews the faces between two stations, from an angle and on by a step.
    fn patch(&self, sewing: &mut Sewing, [low, high]: [&Ring; 2], [from, step]: [f64; 2]) {
        let profile = sides(&self.profile, true);
        let arcs: Vec<Along> = profile
            .iter()
            .enumerate()
            .map(|(i, side)| {
                let oval = Oval {
                    centre: Point3::new(0.0, 0.0, side.from.y),
                    first: spoke(from) * side.from.x,
                    second: turned(from) * side.from.x,
                };
                sewing.edge([low.corners[i], high.corners[i]], Curve::Oval(oval))
            })
            .collect();
        let turn = Turn {
            origin: Point3::origin(),
            axis: Vector3::z(),
            middle: spoke(from + step / 2.0),
        };
        let n = profile.len();
        for (i, side) in profile.iter().enumerate() {
            // Seen along the turn the profile runs clockwise, for x × z points against y.
            let rim = vec![
                arcs[i],
                high.sides[i],
                arcs[(i + 1) % n].back(),
                low.sides[i].back(),
            ];
            sewing.face(turn.surface(side), vec![rim]);
        }
    }
}

/// The direction of the turn at an angle.
fn turned(angle: f64) -> Vector3 {
    Vector3::new(-angle.sin(), angle.cos(), 0.0)
}
