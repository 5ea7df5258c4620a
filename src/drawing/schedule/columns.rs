//! How wide the columns of a table are.

use super::lines::widest_word;
use crate::drawing::lettering;
use crate::table::{Cell, Table};

/// What a column of a table asks for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Wish {
    /// Its widest word: it gets no less while there is room.
    pub least: f64,
    /// Its widest cell on one line: it gets no more.
    pub most: f64,
}

/// A heading up to this width asks to stand on one line, millimetres; a wider one is broken.
const SHORT_HEADING: f64 = 22.0;

/// What every column asks for in lettering of this height, air included.
pub(super) fn wishes(table: &Table, spelt: &[Vec<String>], height: f64, air: f64) -> Vec<Wish> {
    let columns = table.columns.iter().enumerate();
    columns
        .map(|(i, column)| {
            let title = column.title();
            let heading = widest_word(&title, height);
            let whole = lettering::width(&title, height).min(SHORT_HEADING);
            let cells = || spelt.iter().filter_map(|row| row.get(i));
            let word = cells().map(|c| widest_word(c, height));
            let line = cells().map(|c| lettering::width(c, height));
            let least = word.fold(heading, f64::max);
            Wish {
                least: least + air,
                most: line.fold(least.max(whole), f64::max) + air,
            }
        })
        .collect()
}

/// The widths that columns get: all they ask for where there is room; else the widest are made narrower, down to their
/// widest word, and where even that is too much, below it. Together they are never wider than `width`.
pub(super) fn widths(wishes: &[Wish], width: f64) -> Vec<f64> {
    let at = |level: f64| wishes.iter().map(move |w| w.most.min(level).max(w.least));
    let below = |level: f64| wishes.iter().map(move |w| w.least.min(level));
    let sum = |widths: &mut dyn Iterator<Item = f64>| widths.sum::<f64>();
    if sum(&mut wishes.iter().map(|w| w.most)) <= width {
        wishes.iter().map(|w| w.most).collect()
    } else if sum(&mut at(0.0)) <= width {
        at(level(width, |l| sum(&mut at(l)) <= width)).collect()
    } else {
        below(level(width, |l| sum(&mut below(l)) <= width)).collect()
    }
}

/// The highest level up to `width` that fits, found by halving.
fn level(width: f64, fits: impl Fn(f64) -> bool) -> f64 {
    let (mut low, mut high) = (0.0, width.max(0.0));
    for _ in 0..48 {
        let middle = f64::midpoint(low, high);
        if fits(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    low
}

/// For every column whether it holds figures only: numbers, lengths, sizes. They are set against its right side.
pub(super) fn of_figures(table: &Table) -> Vec<bool> {
    let columns = 0..table.columns.len();
    columns
        .map(|i| {
            let cells = table.rows.iter().filter_map(|row| row.get(i));
            let mut filled = cells.filter(|c| !matches!(c, Cell::Empty)).peekable();
            filled.peek().is_some() && filled.all(is_figure)
        })
        .collect()
}

fn is_figure(cell: &Cell) -> bool {
    match cell {
        Cell::Empty => false,
        Cell::Number { .. } => true,
        Cell::Text(text) => {
            text.starts_with(|c: char| c.is_ascii_digit() || c == '-')
                && text
                    .chars()
                    .all(|c| c.is_ascii_digit() || " .,'\"/-×%".contains(c))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn wish(least: f64, most: f64) -> Wish {
        Wish { least, most }
    }

    #[test]
    fn the_widest_column_gives_way_first() {
        let wishes = [wish(10.0, 20.0), wish(15.0, 100.0)];
        assert_eq!(widths(&wishes, 150.0), [20.0, 100.0]);
        let narrow = widths(&wishes, 80.0);
        assert_eq!(narrow[0], 20.0);
        assert!((narrow[1] - 60.0).abs() < 1e-6);
        let tight = widths(&wishes, 24.0);
        assert!((tight[0] - 10.0).abs() < 1e-6 && (tight[1] - 14.0).abs() < 1e-6);
    }

    #[test]
    fn lengths_and_sizes_are_figures_and_marks_are_not() {
        for figure in ["3'-6 1/2\"", "24 × 21", "610", "-5", "75 %"] {
            assert!(is_figure(&Cell::text(figure)), "{figure}");
        }
        for words in ["C-S07", "30 lb", "", "× 2"] {
            assert!(!is_figure(&Cell::text(words)), "{words}");
        }
    }
}
