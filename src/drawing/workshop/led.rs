//! Texts beside ticks along a line, stacked so that none crosses another.

use crate::drawing::lettering;
use crate::drawing::page::LETTERS;

/// From a tick to its text, millimetres.
pub(super) const AIR: f64 = 0.8;
/// From one row of texts to the next.
pub(super) const ROW: f64 = 3.9;

/// A text beside a tick.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Led {
    /// Where the tick is.
    pub x: f64,
    /// What it says.
    pub text: String,
    /// Its row, 0 the nearest to the line; the tick reaches as far as that.
    pub row: usize,
    /// True when the text stands to the left of its tick.
    pub left: bool,
}

impl Led {
    /// How far from its tick the text reaches.
    fn reach(&self) -> f64 {
        AIR + lettering::width(&self.text, LETTERS)
    }

    /// From where to where it takes up room.
    pub fn span(&self) -> (f64, f64) {
        if self.left {
            (self.x - self.reach(), self.x)
        } else {
            (self.x, self.x + self.reach())
        }
    }
}

/// Stacks texts to the right of their ticks, or to the left where they would else pass `limit` and have the room.
pub(super) fn stacked(texts: impl IntoIterator<Item = (f64, String)>, limit: f64) -> Vec<Led> {
    let led: Vec<_> = texts.into_iter().collect();
    let right = beside(led.clone(), false);
    let left = beside(led, true);
    let fits_right = right.iter().all(|l| l.span().1 <= limit);
    let fits_left = left.iter().all(|l| l.span().0 >= 0.0);
    if !fits_right && fits_left {
        left
    } else {
        right
    }
}

/// Gives each text the nearest row in which it is clear of all that stand on its text's side of it and of their ticks.
fn beside(texts: Vec<(f64, String)>, left: bool) -> Vec<Led> {
    let led = texts.into_iter().map(|(x, text)| Led {
        x,
        text,
        row: 0,
        left,
    });
    let mut led: Vec<Led> = led.collect();
    let sign = if left { -1.0 } else { 1.0 };
    led.sort_by(|a, b| (a.x * sign).total_cmp(&(b.x * sign)));
    for i in (0..led.len()).rev() {
        let end = led[i].x * sign + led[i].reach() + AIR;
        let met = led[i + 1..].iter().take_while(|other| other.x * sign < end);
        led[i].row = met.map(|other| other.row + 1).max().unwrap_or(0);
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

    const TEXT: &str = "0123456789";

    fn rows_of(led: &[Led]) -> Vec<usize> {
        led.iter().map(|l| l.row).collect()
    }

    #[test]
    fn of_texts_that_would_meet_the_left_one_steps_away() {
        let wide = lettering::width(TEXT, LETTERS);
        let at = |x: f64| (x, TEXT.to_owned());
        let led = stacked([at(0.0), at(3.0), at(6.0), at(9.0 + wide)], 200.0);
        // The third and the fourth stand apart; the first two each meet what is to the right of them.
        assert_eq!(rows_of(&led), [2, 1, 0, 0]);
        assert_eq!(rows(&led), 3);
        assert_eq!(rows(&[]), 0);
    }

    #[test]
    fn at_the_far_end_texts_stand_to_the_left() {
        let wide = lettering::width(TEXT, LETTERS);
        let at = |x: f64| (x, TEXT.to_owned());
        let led = stacked([at(wide + 2.0), at(100.0), at(103.0)], 105.0);
        assert!(led.iter().all(|l| l.left && l.span().1 == l.x));
        // From right to left: the last one meets its neighbour.
        assert_eq!(rows_of(&led), [1, 0, 0]);
        // No room on the left either: they stay to the right, and the sheet's scale must give way.
        assert!(stacked([at(1.0), at(100.0)], 105.0).iter().all(|l| !l.left));
    }
}
