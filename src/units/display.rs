//! Spelling a length on a drawing or in a message.

use super::Length;

/// How lengths are spelt: feet, inches and fractions, or millimetres.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Notation {
    /// Feet, inches and sixteenths: `3' 6-1/2"`; below one foot `6-1/2"`.
    Imperial,
    /// Whole millimetres: `1080`.
    Metric,
}

const SIXTEENTH: f64 = 25.4 / 16.0;

impl Notation {
    /// The step to which drawings round: 1/16 in or 1 mm.
    pub fn step(self) -> Length {
        Length::millimetres(match self {
            Self::Imperial => SIXTEENTH,
            Self::Metric => 1.0,
        })
    }

    /// The number of whole steps nearest to a length, halves away from zero.
    pub fn steps(self, length: Length) -> i64 {
        // A tie must not depend on the last bit of a sum of inches.
        let steps = length / self.step();
        (steps.abs() + 1e-9).round() as i64 * if steps < 0.0 { -1 } else { 1 }
    }

    /// Spells a number of steps.
    pub fn spell_steps(self, steps: i64) -> String {
        match self {
            Self::Metric => steps.to_string(),
            Self::Imperial => spell_sixteenths(steps),
        }
    }

    /// Spells a length rounded to the step, as on a drawing.
    ///
    /// ```
    /// use islandwright::units::{Length, Notation};
    /// assert_eq!(Notation::Imperial.spell(Length::inches(42.5)), "3'-6 1/2\"");
    /// assert_eq!(Notation::Metric.spell(Length::millimetres(609.6)), "610");
    /// ```
    pub fn spell(self, length: Length) -> String {
        self.spell_steps(self.steps(length))
    }

    /// Spells a length rounded to the step with its unit always there, for messages and tables.
    pub fn spell_with_unit(self, length: Length) -> String {
        match self {
            Self::Metric => format!("{} mm", self.spell(length)),
            Self::Imperial => self.spell(length),
        }
    }
}

fn spell_sixteenths(steps: i64) -> String {
    let sign = if steps < 0 { "-" } else { "" };
    let steps = steps.abs();
    let (feet, rest) = (steps / 192, steps % 192);
    let (inches, sixteenths) = (rest / 16, rest % 16);
    let fraction = if sixteenths == 0 {
        String::new()
    } else {
        let shift = sixteenths.trailing_zeros();
        format!("{}/{}", sixteenths >> shift, 16 >> shift)
    };
    let inch_text = match (inches, fraction.is_empty()) {
        (n, true) => format!("{n}\""),
        (0, false) if feet == 0 => format!("{fraction}\""),
        (n, false) => format!("{n} {fraction}\""),
    };
    if feet == 0 {
        format!("{sign}{inch_text}")
    } else {
        format!("{sign}{feet}'-{inch_text}")
    }
}

/// A row of stations along one line whose rounded gaps always add up to the rounded overall.
///
/// Stations are rounded, not gaps: each gap is the difference of two rounded stations measured from the first one.
#[derive(Clone, Debug)]
pub struct Chain {
    stations: Vec<i64>,
    notation: Notation,
}

impl Chain {
    /// Rounds the stations of one chain; they are taken in the order given.
    pub fn new(notation: Notation, stations: &[Length]) -> Self {
        let first = stations.first().copied().unwrap_or_default();
        let stations = stations
            .iter()
            .map(|&s| notation.steps(s - first))
            .collect();
        Self { stations, notation }
    }

    /// The spelt gaps between neighbouring stations.
    pub fn gaps(&self) -> Vec<String> {
        self.stations
            .windows(2)
            .map(|pair| self.notation.spell_steps(pair[1] - pair[0]))
            .collect()
    }

    /// The spelt distance from the first station to the last.
    pub fn overall(&self) -> String {
        self.notation
            .spell_steps(self.stations.last().copied().unwrap_or(0))
    }
}

impl std::fmt::Display for Length {
    /// Exactly, as the parameter file would spell it: `609.6 mm`; reading it back gives the same length.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} mm", self.mm())
    }
}

#[cfg(test)]
mod tests {
    use super::super::parse_length;
    use super::*;

    #[test]
    fn feet_inches_and_fractions_are_spelt_as_on_a_tape() {
        for (inches, text) in [
            (0.0, "0\""),
            (0.5, "1/2\""),
            (6.25, "6 1/4\""),
            (12.0, "1'-0\""),
            (42.5, "3'-6 1/2\""),
            (12.0625, "1'-0 1/16\""),
            (11.99, "1'-0\""),
            (-3.0, "-3\""),
        ] {
            assert_eq!(Notation::Imperial.spell(Length::inches(inches)), text);
        }
    }

    #[test]
    fn a_rounded_chain_adds_up() {
        // Three thirds of a metre: each gap alone would round to 333 and lose one millimetre.
        let stations: Vec<_> = (0..=3)
            .map(|i| Length::millimetres(1000.0 * f64::from(i) / 3.0))
            .collect();
        let chain = Chain::new(Notation::Metric, &stations);
        assert_eq!(chain.gaps(), ["333", "334", "333"]);
        assert_eq!(chain.overall(), "1000");
    }

    proptest::proptest! {
        #[test]
        fn a_spelt_length_reads_back_exactly(sixteenths in 0_u32..200_000, mm in 0.0_f64..100_000.0) {
            let length = Length::inches(f64::from(sixteenths) / 16.0);
            let read = parse_length(&Notation::Imperial.spell(length)).unwrap();
            proptest::prop_assert!((read.mm() - length.mm()).abs() < 1e-9);
            let exact = Length::millimetres(mm);
            proptest::prop_assert_eq!(parse_length(&exact.to_string()).unwrap(), exact);
        }
    }
}
