//! The room that a leaf or a drawer sweeps in plan when it opens.

use crate::geometry::{Bounds2, Point2, Vector2};

/// What is swept, in world coordinates, millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Swept {
    /// A leaf on an upright hinge: a quarter of a disc between two directions at right angles.
    Quarter {
        /// The hinge.
        hinge: Point2,
        /// Where the shut leaf points, a unit vector.
        shut: Vector2,
        /// Where it points when it is open.
        open: Vector2,
        /// The width of the leaf.
        width: f64,
    },
    /// A drawer, or a leaf on a level hinge.
    Box(Bounds2),
}

/// How many chords stand for the arc where two leaves are compared; they are within a thousandth of the leaf's width.
const CHORDS: usize = 18;

impl Swept {
    /// From what is swept to a box along the axes; zero where they meet.
    pub(super) fn distance(&self, other: &Bounds2) -> f64 {
        match self {
            Self::Box(b) => apart(b, other),
            Self::Quarter { width, .. } => {
                let [a, b] = [other.low, other.high].map(|p| self.local(p));
                let (low, high) = (a.inf(&b), a.sup(&b));
                quarter_to_point(*width, nearest(low.x, high.x), nearest(low.y, high.y))
            }
        }
    }

    /// True when two rooms share more than `tolerance`.
    pub(super) fn meets(&self, other: &Self, tolerance: f64) -> bool {
        match (self, other) {
            (Self::Box(a), Self::Box(b)) => a.overlaps(b, tolerance),
            (Self::Quarter { .. }, Self::Box(b)) | (Self::Box(b), Self::Quarter { .. }) => {
                let quarter = if matches!(self, Self::Box(_)) {
                    other
                } else {
                    self
                };
                let mut less = *b;
                less.low += Vector2::repeat(tolerance);
                less.high -= Vector2::repeat(tolerance);
                less.low.x <= less.high.x
                    && less.low.y <= less.high.y
                    && quarter.distance(&less) <= 0.0
            }
            _ => self.holds_any(other, tolerance) || other.holds_any(self, tolerance),
        }
    }

    /// True when a point of another quarter's rim or of its two straight sides is inside this one.
    fn holds_any(&self, other: &Self, tolerance: f64) -> bool {
        let (
            Self::Quarter { width, .. },
            Self::Quarter {
                hinge,
                shut,
                open,
                width: reach,
            },
        ) = (self, other)
        else {
            return false;
        };
        let inside = |p: Point2| {
            let l = self.local(p);
            l.x > tolerance && l.y > tolerance && l.x.hypot(l.y) < width - tolerance
        };
        (0..=CHORDS).any(|i| {
            let part = i as f64 / CHORDS as f64;
            let (sin, cos) = (part * std::f64::consts::FRAC_PI_2).sin_cos();
            let rim = hinge + (shut * cos + open * sin) * *reach;
            [
                rim,
                hinge + shut * (part * reach),
                hinge + open * (part * reach),
            ]
            .into_iter()
            .any(inside)
        })
    }

    /// A point as the quarter sees it: along the shut leaf and along the open one.
    fn local(&self, p: Point2) -> Point2 {
        match self {
            Self::Quarter {
                hinge, shut, open, ..
            } => {
                let d = p - hinge;
                Point2::new(d.dot(shut), d.dot(open))
            }
            Self::Box(_) => p,
        }
    }
}

/// The value of a stretch that is nearest to the quarter's own, which begins at zero.
fn nearest(low: f64, high: f64) -> f64 {
    if high < 0.0 { high } else { low.max(0.0) }
}

/// From a point to the quarter of a disc in the first quadrant.
fn quarter_to_point(radius: f64, x: f64, y: f64) -> f64 {
    match (x < 0.0, y < 0.0) {
        (true, true) => x.hypot(y),
        (true, false) => x.hypot((y - radius).max(0.0)),
        (false, true) => y.hypot((x - radius).max(0.0)),
        (false, false) => (x.hypot(y) - radius).max(0.0),
    }
}

/// From one box to another.
fn apart(a: &Bounds2, b: &Bounds2) -> f64 {
    let x = (b.low.x - a.high.x).max(a.low.x - b.high.x).max(0.0);
    let y = (b.low.y - a.high.y).max(a.low.y - b.high.y).max(0.0);
    x.hypot(y)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn leaf(width: f64) -> Swept {
        Swept::Quarter {
            hinge: Point2::new(100.0, 0.0),
            shut: -Vector2::x(),
            open: -Vector2::y(),
            width,
        }
    }

    fn square(x: f64, y: f64, side: f64) -> Bounds2 {
        Bounds2 {
            low: Point2::new(x, y),
            high: Point2::new(x + side, y + side),
        }
    }

    #[test]
    fn a_leaf_of_fifty_clears_what_is_outside_its_arc() {
        // Hinge at (100, 0), shut towards −x, open towards −y. A corner at 30 left and 40 down is on the arc.
        assert_eq!(leaf(50.0).distance(&square(60.0, -50.0, 10.0)), 0.0);
        assert!((leaf(45.0).distance(&square(60.0, -50.0, 10.0)) - 5.0).abs() < 1e-9);
        // Beside the hinge, 12 to the right of the open leaf; behind the shut leaf, 7.
        assert_eq!(leaf(50.0).distance(&square(112.0, -20.0, 10.0)), 12.0);
        assert_eq!(leaf(50.0).distance(&square(60.0, 7.0, 10.0)), 7.0);
        // Past the hinge and behind it: 3, 4, 5.
        assert_eq!(leaf(50.0).distance(&square(103.0, 4.0, 10.0)), 5.0);
    }

    #[test]
    fn two_leaves_in_a_corner_meet_where_their_arcs_cross() {
        // The second stands square to the first: hinge at (0, −100), shut towards +y, open towards +x.
        let other = |width| Swept::Quarter {
            hinge: Point2::new(0.0, -100.0),
            shut: Vector2::y(),
            open: Vector2::x(),
            width,
        };
        // The hinges are √2 · 100 = 141.4 apart.
        assert!(leaf(80.0).meets(&other(80.0), 1.0));
        assert!(!leaf(60.0).meets(&other(80.0), 1.0));
        let drawer = Swept::Box(square(0.0, -40.0, 55.0));
        assert!(leaf(50.0).meets(&drawer, 1.0) && drawer.meets(&leaf(50.0), 1.0));
        assert!(!leaf(44.0).meets(&drawer, 1.0));
    }

    proptest! {
        #[test]
        fn a_wider_leaf_is_never_farther_from_anything(
            x in -200.0..200.0_f64, y in -200.0..200.0_f64, side in 0.0..80.0_f64, width in 1.0..100.0_f64, more in 0.0..50.0_f64,
        ) {
            let there = square(x, y, side);
            prop_assert!(leaf(width + more).distance(&there) <= leaf(width).distance(&there) + 1e-9);
        }

        #[test]
        fn the_distance_is_that_of_the_nearest_of_many_points(
            x in -100.0..200.0_f64, y in -200.0..100.0_f64, side in 0.0..60.0_f64, width in 10.0..90.0_f64,
        ) {
            let there = square(x, y, side);
            let steps = 60;
            let mut least = f64::INFINITY;
            for i in 0..=steps {
                for j in 0..=steps {
                    let (r, angle) = (width * f64::from(i) / 60.0, std::f64::consts::FRAC_PI_2 * f64::from(j) / 60.0);
                    let p = Point2::new(100.0 - r * angle.cos(), -r * angle.sin());
                    let q = Point2::new(p.x.clamp(x, x + side), p.y.clamp(y, y + side));
                    least = least.min((p - q).norm());
                }
            }
            prop_assert!((leaf(width).distance(&there) - least).abs() < width * 0.03);
        }
    }
}
