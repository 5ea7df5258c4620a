//! 3-4-5 marks.

use crate::units::Notation;

/// A right angle by the numbers 3, 4 and 5: marks on the two sides from the corner, and how far apart they must be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SquareMark {
    /// Number of the corner's point.
    pub corner: usize,
    /// The point towards which the first leg runs, and how long it is, millimetres.
    pub first: (usize, f64),
    /// The same for the second leg.
    pub second: (usize, f64),
    /// From mark to mark, millimetres.
    pub across: f64,
    /// How many times 3, 4 and 5 in the unit of the tape.
    pub times: u32,
}

/// The step by which the triangle grows: an inch, or a centimetre.
fn step(notation: Notation) -> f64 {
    match notation {
        Notation::Imperial => 25.4,
        Notation::Metric => 10.0,
    }
}

/// The largest whole multiple of 3, 4 and 5 inches (or centimetres) whose legs fit two sides of a corner; whether the first
/// leg is the longer one; `None` where not even 3 by 4 fits.
pub fn square_mark(first: f64, second: f64, notation: Notation) -> Option<(u32, bool)> {
    let step = step(notation);
    let times = |three: f64, four: f64| {
        let fits = (three / 3.0).min(four / 4.0) / step + 1e-9;
        fits.floor().clamp(0.0, 10_000.0) as u32
    };
    let (upright, lying) = (times(first, second), times(second, first));
    match (upright, lying) {
        (0, 0) => None,
        (a, b) if b >= a => Some((b, true)),
        (a, _) => Some((a, false)),
    }
}

impl SquareMark {
    /// The mark at a corner between two sides, each given by the point at its other end and its length.
    pub(super) fn new(
        corner: usize,
        first: (usize, f64),
        second: (usize, f64),
        notation: Notation,
    ) -> Option<Self> {
        let (times, is_lying) = square_mark(first.1, second.1, notation)?;
        let unit = step(notation) * f64::from(times);
        let (a, b) = if is_lying { (4.0, 3.0) } else { (3.0, 4.0) };
        Some(Self {
            corner,
            first: (first.0, a * unit),
            second: (second.0, b * unit),
            across: 5.0 * unit,
            times,
        })
    }
}
