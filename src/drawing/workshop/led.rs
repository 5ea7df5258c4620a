//! Texts beside ticks along a line, stacked so that none crosses another.

use crate::drawing::lettering;
use crate::drawing::page::LETTERS;

/// From a tick to its text, millimetres.
pub(super) const AIR: f64 = 0.8;
/// From one row of texts to the next.
pub(super) const ROW: f64 = 3.9;

/// A text to the right of a tick.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Led {
    /// Where the tick is.
    pub x: f64,
    /// What it says.
    pub text: String,
    /// Its row, 0 the nearest to the line; the tick reaches as far as that.
    pub row: usize,
}

impl Led {
    /// Where the text ends.
    pub fn end(&self) -> f64 {
        self.x + AIR + lettering::width(&self.text, LETTERS)
    }
}

/// Gives each text, from left to right, the nearest row in which it is clear of all that stand to its right and of
/// their ticks.
pub(super) fn stacked(texts: impl IntoIterator<Item = (f64, String)>) -> Vec<Led> {
    let mut led: Vec<Led> = texts
        .into_iter()
        .map(|(x, text)| Led { x, text, row: 0 })
        .collect();
    led.sort_by(|a, b| a.x.total_cmp(&b.x));
    for i in (0..led.len()).rev() {
        let end = led[i].end() + AIR;
        let beside = led[i + 1..].iter().take_while(|other| other.x < end);
        led[i].row = beside.map(|other| other.row + 1).max().unwrap_or(0);
    }
    led
}

/// How many rows there are.
pub(super) fn rows(led: &[Led]) -> usize {
    led.iter().map(|l| l.row + 1).max().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn of_texts_that_would_meet_the_left_one_steps_away() {
        let text = "0123456789".to_owned();
        let wide = lettering::width(&text, LETTERS);
        let at = |x: f64| (x, text.clone());
        let led = stacked([at(0.0), at(3.0), at(6.0), at(9.0 + wide)]);
        let found: Vec<_> = led.iter().map(|l| l.row).collect();
        // The third and the fourth stand apart; the first two each meet what is to the right of them.
        assert_eq!(found, [2, 1, 0, 0]);
        assert_eq!(rows(&led), 3);
        assert_eq!(rows(&[]), 0);
    }
}
