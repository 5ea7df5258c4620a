//! What squares a run.

use crate::design::FrameCorner;
use crate::geometry::Point2;

/// A corner to push so that the diagonals of a run become equal: its long side goes along itself, the other one stays.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Push {
    /// A corner at which the longer diagonal ends: the one on the seating side, but where that joins another run and the
    /// other does not.
    pub corner: FrameCorner,
    /// How far along its long side, towards the other corner of that side, millimetres, never negative.
    pub by: f64,
}

impl Push {
    /// For the corners of a run, in the order of [`FrameCorner::ALL`], and which of them are joined to another run.
    ///
    /// With A and B the ends of the working side and C over B, D over A: pushing C and D by t along a line of length L changes
    /// AC² − BD² by 2t(|AB| + |DC|), to the first order of the angle between the two sides.
    pub(super) fn of(corners: &[Point2; 4], joined: [bool; 4]) -> Self {
        use FrameCorner::{SeatingLeft, SeatingRight, WorkingLeft, WorkingRight};
        let [a, b, c, d] = corners;
        let excess = (c - a).norm_squared() - (d - b).norm_squared();
        let lengths = (b - a).norm() + (c - d).norm();
        let by = excess / (2.0 * lengths);
        let [seating, working] = if by > 0.0 {
            [SeatingRight, WorkingLeft]
        } else {
            [SeatingLeft, WorkingRight]
        };
        let is_tied = joined[seating as usize] && !joined[working as usize];
        Self {
            corner: if is_tied { working } else { seating },
            by: if by.is_finite() { by.abs() } else { 0.0 },
        }
    }

    /// In which direction it is pushed: left or right as the cook sees it.
    pub fn towards(&self) -> &'static str {
        match self.corner {
            FrameCorner::SeatingRight | FrameCorner::WorkingRight => "left",
            FrameCorner::SeatingLeft | FrameCorner::WorkingLeft => "right",
        }
    }

    /// The side that is held meanwhile.
    pub fn held(&self) -> &'static str {
        match self.corner {
            FrameCorner::SeatingRight | FrameCorner::SeatingLeft => "working side",
            FrameCorner::WorkingRight | FrameCorner::WorkingLeft => "seating side",
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
            Push::of(&at.map(|(x, y)| Point2::new(x, y)), [false; 4])
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
    fn a_corner_that_joins_another_run_is_left_alone() {
        let at = [(0.0, 0.0), (3000.0, 0.0), (3006.0, 800.0), (6.0, 800.0)];
        let at = at.map(|(x, y)| Point2::new(x, y));
        let push = Push::of(&at, [false, true, true, false]);
        let words = (push.corner, push.towards(), push.held());
        assert_eq!(words, (FrameCorner::WorkingLeft, "right", "seating side"));
        // Between two others there is no free end of that diagonal.
        assert_eq!(Push::of(&at, [true; 4]).corner, FrameCorner::SeatingRight);
    }

    #[test]
    fn after_the_push_the_diagonals_are_equal() {
        // Ends and sides of four lengths: the push of each corner of the seating side along it, by hand.
        let at = [(0.0, 0.0), (3000.0, 0.0), (3014.0, 806.0), (9.0, 795.0)];
        let mut at = at.map(|(x, y)| Point2::new(x, y));
        let push = Push::of(&at, [false; 4]);
        let along = (at[3] - at[2]).normalize() * push.by;
        at[2] += along;
        at[3] += along;
        let apart = (at[2] - at[0]).norm() - (at[3] - at[1]).norm();
        assert!(apart.abs() < 0.1, "{apart}");
    }
}
