//! What a wrong tape reading looks like.

use crate::units::Notation;

/// A slip of the tape that explains by how much a reading is off, common practice.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Slip {
    /// Off by whole feet.
    Feet(i32),
    /// Off by whole inches.
    Inches(i32),
    /// Off by whole tenths of a metre.
    Tenths(i32),
    /// Off by whole centimetres.
    Centimetres(i32),
}

/// A unit in millimetres, and the slip that so many of it are.
type Kind = (f64, fn(i32) -> Slip);

/// No more whole units than this are a slip.
const MOST: f64 = 11.0;

impl Slip {
    /// The slip that a reading's error is, as far as `sure` millimetres tell it from others.
    pub(super) fn of(error: f64, sure: f64, notation: Notation) -> Option<Self> {
        let kinds: [Kind; 2] = match notation {
            Notation::Imperial => [(304.8, Self::Feet), (25.4, Self::Inches)],
            Notation::Metric => [(100.0, Self::Tenths), (10.0, Self::Centimetres)],
        };
        kinds.into_iter().find_map(|(unit, kind)| {
            let count = (error / unit).round();
            let is_whole = (error - count * unit).abs() <= sure;
            let is_told = sure < unit / 4.0 && count != 0.0 && count.abs() <= MOST;
            (is_whole && is_told).then(|| kind(count as i32))
        })
    }

    /// In words, such as `one whole foot too long`.
    pub fn words(self) -> String {
        let (count, one, many) = match self {
            Self::Feet(n) => (n, "foot", "feet"),
            Self::Inches(n) => (n, "inch", "inches"),
            Self::Tenths(n) => (n, "tenth of a metre", "tenths of a metre"),
            Self::Centimetres(n) => (n, "centimetre", "centimetres"),
        };
        let way = if count > 0 { "long" } else { "short" };
        match count.abs() {
            1 => format!("one whole {one} too {way}"),
            n => format!("{n} whole {many} too {way}"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn whole_feet_and_inches_are_slips() {
        let imperial = |error, sure| Slip::of(error, sure, Notation::Imperial);
        assert_eq!(imperial(304.8 + 2.0, 4.0), Some(Slip::Feet(1)));
        assert_eq!(imperial(-25.4 + 1.0, 4.0), Some(Slip::Inches(-1)));
        assert_eq!(imperial(12.7, 4.0), None);
        assert_eq!(imperial(2.0, 4.0), None);
        // Known to half an inch only, no inch can be told.
        assert_eq!(imperial(25.4, 12.7), None);
        assert_eq!(
            Slip::of(-99.0, 2.0, Notation::Metric),
            Some(Slip::Tenths(-1))
        );
        assert_eq!(Slip::Inches(-1).words(), "one whole inch too short");
        assert_eq!(Slip::Feet(2).words(), "2 whole feet too long");
    }
}
