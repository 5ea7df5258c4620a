//! How long a screw and how high a standoff must be.

use crate::catalog::Need;
use crate::units::{Length, Notation};

/// A need and, of screws and standoffs, the length that serves it.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Asked {
    pub need: Option<Need>,
    pub length: Option<Length>,
}

impl Asked {
    pub fn long(need: Need, length: Length) -> Self {
        Self {
            need: Some(need),
            length: Some(length),
        }
    }
}

impl From<Option<Need>> for Asked {
    fn from(need: Option<Need>) -> Self {
        Self { need, length: None }
    }
}

/// Lengths of screws that are made, sixteenths of an inch; common practice.
const INCHES: [f64; 9] = [8.0, 10.0, 12.0, 16.0, 20.0, 26.0, 32.0, 40.0, 48.0];
/// Lengths of screws that are made, millimetres; common practice.
const METRIC: [f64; 9] = [13.0, 16.0, 19.0, 25.0, 32.0, 41.0, 51.0, 64.0, 76.0];

/// The shortest screw made that passes `through` and bites `bite` beyond it, unless that is more than `most` beyond it:
/// then the longest that is not, or the shortest of all. Millimetres.
pub(super) fn screw(notation: Notation, through: f64, bite: f64, most: f64) -> Length {
    let made = match notation {
        Notation::Imperial => INCHES.map(|n| n * 25.4 / 16.0),
        Notation::Metric => METRIC,
    };
    let mut allowed = made.iter().filter(|l| **l <= through + most + 1e-6);
    let enough = allowed.clone().find(|l| **l >= through + bite - 1e-6);
    let length = enough.or_else(|| allowed.next_back()).unwrap_or(&made[0]);
    Length::millimetres(*length)
}

/// Heights of standoffs that are made, sixteenths of an inch; common practice.
const HIGH_INCHES: [f64; 6] = [12.0, 16.0, 20.0, 24.0, 32.0, 40.0];
/// Heights of standoffs that are made, millimetres; common practice.
const HIGH_METRIC: [f64; 6] = [20.0, 25.0, 30.0, 40.0, 50.0, 60.0];

/// The highest standoff made that holds the mesh no higher than the middle of a slab, or the lowest of all. Millimetres.
pub(super) fn standoff(notation: Notation, slab: f64) -> Length {
    let made = match notation {
        Notation::Imperial => HIGH_INCHES.map(|n| n * 25.4 / 16.0),
        Notation::Metric => HIGH_METRIC,
    };
    let mut low = made.iter().filter(|h| **h <= slab / 2.0 + 1e-6);
    Length::millimetres(*low.next_back().unwrap_or(&made[0]))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_inch_board_takes_an_inch_and_a_quarter() {
        let screw = |notation, through| screw(notation, through, 19.05, f64::INFINITY);
        // 1/2 + 3/4 is 1-1/4 in; 5/8 + 3/4 is 1-3/8, for which 1-5/8 is the next made.
        assert_eq!(screw(Notation::Imperial, 12.7), Length::inches(1.25));
        assert_eq!(screw(Notation::Imperial, 15.875), Length::inches(1.625));
        assert_eq!(screw(Notation::Metric, 12.0), Length::millimetres(32.0));
    }

    #[test]
    fn a_screw_stays_within_a_thin_strip() {
        // Through 1 mm, into a strip of 20 of which 17 may be used: 16 mm.
        let into = |most| screw(Notation::Metric, 1.0, 25.4, most);
        assert_eq!(into(17.0), Length::millimetres(16.0));
        assert_eq!(into(3.0), Length::millimetres(13.0));
    }

    #[test]
    fn a_standoff_holds_the_mesh_in_the_middle_at_most() {
        for (slab, high) in [
            (1.0, 0.75),
            (1.5, 0.75),
            (2.0, 1.0),
            (2.25, 1.0),
            (3.0, 1.5),
        ] {
            let found = standoff(Notation::Imperial, slab * 25.4);
            assert!((found.in_inches() - high).abs() < 1e-9, "{slab}: {found}");
        }
        assert_eq!(standoff(Notation::Metric, 80.0), Length::millimetres(40.0));
    }
}
