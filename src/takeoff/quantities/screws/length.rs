//! How long a screw must be.

use crate::units::{Length, Notation};

/// Lengths that are made, sixteenths of an inch; common practice.
const INCHES: [f64; 9] = [8.0, 10.0, 12.0, 16.0, 20.0, 26.0, 32.0, 40.0, 48.0];
/// Lengths that are made, millimetres; common practice.
const METRIC: [f64; 9] = [13.0, 16.0, 19.0, 25.0, 32.0, 41.0, 51.0, 64.0, 76.0];

/// The shortest screw made that passes `through` and bites `bite` beyond it, unless that is more than `most` beyond it:
/// then the longest that is not, or the shortest of all. Millimetres.
pub(super) fn screw_length(notation: Notation, through: f64, bite: f64, most: f64) -> String {
    let made = match notation {
        Notation::Imperial => INCHES.map(|n| n * 25.4 / 16.0),
        Notation::Metric => METRIC,
    };
    let mut allowed = made.iter().filter(|l| **l <= through + most + 1e-6);
    let enough = allowed.clone().find(|l| **l >= through + bite - 1e-6);
    let length = enough.or_else(|| allowed.next_back()).unwrap_or(&made[0]);
    notation.spell_with_unit(Length::millimetres(*length))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_inch_board_takes_an_inch_and_a_quarter() {
        let no_limit = f64::INFINITY;
        assert_eq!(
            screw_length(Notation::Imperial, 12.7, 19.05, no_limit),
            "1 1/4\""
        );
        assert_eq!(
            screw_length(Notation::Metric, 12.0, 19.05, no_limit),
            "32 mm"
        );
    }

    #[test]
    fn a_screw_stays_within_a_thin_strip() {
        // Through 1 mm, into a strip of 20 of which 17 may be used: 16 mm.
        assert_eq!(screw_length(Notation::Metric, 1.0, 25.4, 17.0), "16 mm");
        assert_eq!(screw_length(Notation::Metric, 1.0, 25.4, 3.0), "13 mm");
    }
}
