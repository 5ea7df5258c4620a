//! What squares a run.

use crate::design::FrameCorner;
use crate::geometry::Point2;

/// A corner to push so that the diagonals of a run become equal: the seating side goes along itself, the working side stays.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Push {
    /// The corner on the seating side at which the longer diagonal ends.
    pub corner: FrameCorner,
    /// How far along the seating side, towards its other corner, millimetres, never negative.
    pub by: f64,
}

impl Push {
    /// For the corners of a run, in the order of [`FrameCorner::ALL`].
    ///
    /// With A and B the ends of the working side and C over B, D over A: pushing C and D by t along a line of length L changes
    /// AC² − BD² by 2t(|AB| + |DC|), to the first order of the angle between the two sides.
    pub(super) fn of(corners: &[Point2; 4]) -> Self {
        let [a, b, c, d] = corners;
        let excess = (c - a).norm_squared() - (d - b).norm_squared();
        let lengths = (b - a).norm() + (c - d).norm();
        let by = excess / (2.0 * lengths);
        Self {
            corner: if by > 0.0 {
                FrameCorner::SeatingRight
            } else {
                FrameCorner::SeatingLeft
            },
            by: if by.is_finite() { by.abs() } else { 0.0 },
        }
    }

    /// In which direction it is pushed: left or right as the cook sees it.
    pub fn towards(&self) -> &'static str {
        if self.corner == FrameCorner::SeatingRight {
            "left"
        } else {
            "right"
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_racked_frame_is_pushed_back_by_what_it_was_racked() {
        let racked = |t: f64| {
            let at = [(0.0, 0.0), (3000.0, 0.0), (3000.0 + t, 800.0), (t, 800.0)];
            Push::of(&at.map(|(x, y)| Point2::new(x, y)))
        };
        // Its right corner hangs over to the right: back to the left.
        let push = racked(6.0);
        assert_eq!(
            (push.corner, push.towards()),
            (FrameCorner::SeatingRight, "left")
        );
        assert!((push.by - 6.0).abs() < 1e-9);
        let push = racked(-6.0);
        assert_eq!(
            (push.corner, push.towards()),
            (FrameCorner::SeatingLeft, "right")
        );
        assert!((push.by - 6.0).abs() < 1e-9);
    }

    #[test]
    fn after_the_push_the_diagonals_are_equal() {
        // Ends and sides of four lengths: the push of each corner of the seating side along it, by hand.
        let at = [(0.0, 0.0), (3000.0, 0.0), (3014.0, 806.0), (9.0, 795.0)];
        let mut at = at.map(|(x, y)| Point2::new(x, y));
        let push = Push::of(&at);
        let along = (at[3] - at[2]).normalize() * push.by;
        at[2] += along;
        at[3] += along;
        let apart = (at[2] - at[0]).norm() - (at[3] - at[1]).norm();
        assert!(apart.abs() < 0.1, "{apart}");
    }
}
