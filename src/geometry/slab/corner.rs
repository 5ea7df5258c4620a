//! Where two sides of a slab's plan meet.

use super::CornerShape;
use crate::geometry::{Point2, Vector2, Vertex};
use nalgebra::Rotation2;

/// A corner of the plan, worked out: directions, turn, and how lines at an inset pass it.
#[derive(Clone, Debug, PartialEq)]
pub struct SlabCorner {
    /// Where the two sides meet, or would meet.
    pub at: Point2,
    /// Inwards from the side that ends here, a unit vector.
    pub before: Vector2,
    /// Inwards from the side that starts here, a unit vector.
    pub after: Vector2,
    /// How far the outline turns here, radians, positive to the left: outward corners of the island.
    pub turn: f64,
    /// What stands in for the sharp corner.
    pub easing: Option<Easing>,
}

/// The arc or short side that stands in for a sharp corner.
///
/// Its lines at all insets are the outermost one scaled about one centre.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Easing {
    /// The centre.
    pub centre: Point2,
    /// The inset at which nothing is left of it; negative for an inward corner, where it only grows.
    pub vanishes: f64,
    /// Where the side that ends here gives over to it, on the outermost line.
    pub first: Point2,
    /// Where the side that starts here takes over, on the outermost line.
    pub last: Point2,
    /// True for an arc.
    pub round: bool,
}

impl Easing {
    /// How large it is at an inset, as a share of its size on the outermost line.
    pub fn share(&self, inset: f64) -> f64 {
        (1.0 - inset / self.vanishes).max(0.0)
    }
}

fn left(v: Vector2) -> Vector2 {
    Vector2::new(-v.y, v.x)
}

impl SlabCorner {
    /// The corner at `at` between the sides that come from `from` and go to `to`.
    pub fn new(from: Point2, at: Point2, to: Point2, shape: CornerShape) -> Self {
        let (before, after) = (left((at - from).normalize()), left((to - at).normalize()));
        let turn = before.perp(&after).atan2(before.dot(&after));
        let mut corner = Self {
            at,
            before,
            after,
            turn,
            easing: None,
        };
        corner.easing = corner.eased(shape);
        corner
    }

    fn eased(&self, shape: CornerShape) -> Option<Easing> {
        let half = (self.turn.abs() / 2.0).tan();
        let (leg, vanishes, round) = match shape {
            CornerShape::Rounded(r) if r > 0.0 => (r * half, r * self.turn.signum(), true),
            // The bisectors of the corner and of the short side's ends meet where all three lines are equally far.
            CornerShape::Chamfered(leg) if leg > 0.0 && self.turn > 0.0 => {
                (leg, leg / (half - (self.turn / 4.0).tan()), false)
            }
            _ => return None,
        };
        Some(Easing {
            centre: self.meet(vanishes, vanishes),
            vanishes,
            first: self.at + left(self.before) * leg,
            last: self.at - left(self.after) * leg,
            round,
        })
    }

    /// True where the outline turns outwards.
    pub fn is_convex(&self) -> bool {
        self.turn > 0.0
    }

    /// How much of each side the easing takes, on the outermost line.
    pub fn leg(&self) -> f64 {
        self.easing.map_or(0.0, |e| (self.at - e.first).norm())
    }

    /// Where the line `a` inside the side that ends here meets the line `b` inside the side that starts here.
    pub fn meet(&self, a: f64, b: f64) -> Point2 {
        let c = self.before.dot(&self.after);
        let s = 1.0 - c * c;
        self.at + self.before * ((a - b * c) / s) + self.after * ((b - a * c) / s)
    }

    /// Where the easing stands when both sides are at one inset; `None` where they meet in a point.
    fn easing_at(&self, a: f64, b: f64) -> Option<(Easing, f64)> {
        let easing = self.easing.filter(|_| a == b)?;
        let share = easing.share(a);
        (share > 0.0).then_some((easing, share))
    }

    /// The last point of the side that ends here and the first of the side that starts here, at their insets.
    pub fn ends(&self, a: f64, b: f64) -> (Point2, Point2) {
        let sharp = self.meet(a, b);
        self.easing_at(a, b).map_or((sharp, sharp), |(e, share)| {
            (
                e.centre + (e.first - e.centre) * share,
                e.centre + (e.last - e.centre) * share,
            )
        })
    }

    /// The line through the corner as vertices of an outline.
    pub fn line(&self, a: f64, b: f64) -> Vec<Vertex> {
        let (first, last) = self.ends(a, b);
        let last = Vertex {
            at: last,
            bulge: 0.0,
        };
        match self.easing_at(a, b) {
            None => vec![last],
            Some((e, _)) => {
                let bulge = if e.round {
                    (self.turn / 4.0).tan()
                } else {
                    0.0
                };
                vec![Vertex { at: first, bulge }, last]
            }
        }
    }

    /// The points through which the corner is faceted at one inset of both sides: one, or one more than `chords`.
    pub fn points(&self, inset: f64, chords: usize) -> Vec<Point2> {
        let Some((e, share)) = self.easing_at(inset, inset) else {
            return vec![self.meet(inset, inset)];
        };
        let chords = if e.round { chords.max(1) } else { 1 };
        (0..=chords)
            .map(|j| match j {
                0 => e.first,
                _ if j == chords => e.last,
                _ => {
                    e.centre
                        + Rotation2::new(self.turn * j as f64 / chords as f64)
                            * (e.first - e.centre)
                }
            })
            .map(|p| e.centre + (p - e.centre) * share)
            .collect()
    }
}
