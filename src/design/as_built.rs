//! The frame as it stands.

use super::Placed;
use crate::diagnostics::Place;
use crate::units::Length;

/// What was measured after framing. Nothing where the file does not say.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct AsBuilt {
    /// Its group in the file.
    pub place: Place,
    /// How finely the tape was read.
    pub tape: Placed<Length>,
    /// The runs that were measured; none twice.
    pub runs: Vec<MeasuredRun>,
}

/// What was measured of one run.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct MeasuredRun {
    /// Number of the run.
    pub run: usize,
    /// Its entry in the file.
    pub place: Place,
    /// The lengths in the order of [`Taped::ALL`]; `None` where one is missing or makes no sense.
    pub lengths: [Option<Placed<Length>>; 6],
    /// The heights in the order of [`FrameCorner::ALL`].
    pub heights: [Option<Placed<Length>>; 4],
}

/// A corner of a run's frame. Left and right are as the cook sees them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum FrameCorner {
    /// Working side, left.
    WorkingLeft,
    /// Working side, right.
    WorkingRight,
    /// Seating side, right.
    SeatingRight,
    /// Seating side, left.
    SeatingLeft,
}

/// A length that is taped on a run's frame.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Taped {
    /// Along the working side.
    Working,
    /// Along the seating side.
    Seating,
    /// Across the left end.
    Left,
    /// Across the right end.
    Right,
    /// From the working side's left corner to the seating side's right corner.
    FromWorkingLeft,
    /// From the working side's right corner to the seating side's left corner.
    FromWorkingRight,
}

impl FrameCorner {
    /// All four, counter-clockwise from above.
    pub const ALL: [Self; 4] = [
        Self::WorkingLeft,
        Self::WorkingRight,
        Self::SeatingRight,
        Self::SeatingLeft,
    ];

    /// Its name in messages and on drawings.
    pub fn name(self) -> &'static str {
        match self {
            Self::WorkingLeft => "working-side left corner",
            Self::WorkingRight => "working-side right corner",
            Self::SeatingRight => "seating-side right corner",
            Self::SeatingLeft => "seating-side left corner",
        }
    }

    /// Its key in the file.
    pub fn key(self) -> &'static str {
        match self {
            Self::WorkingLeft => "working_left",
            Self::WorkingRight => "working_right",
            Self::SeatingRight => "seating_right",
            Self::SeatingLeft => "seating_left",
        }
    }
}

impl Taped {
    /// All six: sides, then diagonals.
    pub const ALL: [Self; 6] = [
        Self::Working,
        Self::Seating,
        Self::Left,
        Self::Right,
        Self::FromWorkingLeft,
        Self::FromWorkingRight,
    ];

    /// The corners between which it is taped.
    pub fn ends(self) -> [FrameCorner; 2] {
        use FrameCorner::{SeatingLeft, SeatingRight, WorkingLeft, WorkingRight};
        match self {
            Self::Working => [WorkingLeft, WorkingRight],
            Self::Seating => [SeatingLeft, SeatingRight],
            Self::Left => [WorkingLeft, SeatingLeft],
            Self::Right => [WorkingRight, SeatingRight],
            Self::FromWorkingLeft => [WorkingLeft, SeatingRight],
            Self::FromWorkingRight => [WorkingRight, SeatingLeft],
        }
    }

    /// True for the two diagonals.
    pub fn is_diagonal(self) -> bool {
        matches!(self, Self::FromWorkingLeft | Self::FromWorkingRight)
    }

    /// Its name in messages and on drawings.
    pub fn name(self) -> &'static str {
        match self {
            Self::Working => "working side",
            Self::Seating => "seating side",
            Self::Left => "left end",
            Self::Right => "right end",
            Self::FromWorkingLeft => "diagonal from working left",
            Self::FromWorkingRight => "diagonal from working right",
        }
    }

    /// Its key below the run's entry in the file.
    pub fn key(self) -> &'static str {
        match self {
            Self::Working => "working",
            Self::Seating => "seating",
            Self::Left => "left",
            Self::Right => "right",
            Self::FromWorkingLeft => "diagonals.from_working_left",
            Self::FromWorkingRight => "diagonals.from_working_right",
        }
    }
}
