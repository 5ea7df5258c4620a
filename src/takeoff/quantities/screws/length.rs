//! How long a screw must be.

use crate::units::{Length, Notation};

/// The length of a screw that passes `through` and bites `bite` beyond it, rounded up to what is made: whole quarters of
/// an inch, or 5 mm.
pub(super) fn screw_length(notation: Notation, through: f64, bite: f64) -> String {
    let step = match notation {
        Notation::Imperial => 25.4 / 4.0,
        Notation::Metric => 5.0,
    };
    let length = ((through + bite) / step - 1e-6).ceil() * step;
    notation.spell_with_unit(Length::millimetres(length))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_inch_board_takes_an_inch_and_a_quarter() {
        assert_eq!(screw_length(Notation::Imperial, 12.7, 19.05), "1 1/4\"");
        assert_eq!(screw_length(Notation::Metric, 12.0, 19.05), "35 mm");
    }
}
