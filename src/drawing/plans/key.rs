//! The key of a plan: what its lines and symbols stand for, in a column of samples and words.

use super::style::Style;
use crate::drawing::page::{self, LETTERS, Page};
use crate::drawing::{Align, Layer, lettering};
use crate::geometry::{Bounds2, Point2, Vector2};

/// Width of a sample, millimetres.
const SAMPLE: f64 = 14.0;
/// From one entry to the next, at least.
const ROW: f64 = 6.5;
/// From one line of an entry to the next.
const LINE: f64 = 4.0;
/// Between sample and words.
const GAP: f64 = 2.5;
/// The widest words of one line.
const WIDEST: f64 = 52.0;

/// How an entry's sample is drawn in its box.
pub(super) type Sample = fn(&mut Page, &Bounds2);

/// One entry.
#[derive(Clone)]
pub(super) struct Entry {
    pub sample: Shown,
    pub words: String,
}

/// What stands before the words.
#[derive(Clone)]
pub(super) enum Shown {
    /// A line.
    Line(Style),
    /// A symbol.
    Symbol(Sample),
    /// Nothing: the words begin where samples do.
    Nothing,
}

impl Entry {
    /// A line and what it stands for.
    pub fn line(style: Style, words: impl Into<String>) -> Self {
        Self {
            sample: Shown::Line(style),
            words: words.into(),
        }
    }

    /// A symbol and what it stands for.
    pub fn symbol(sample: Sample, words: impl Into<String>) -> Self {
        Self {
            sample: Shown::Symbol(sample),
            words: words.into(),
        }
    }

    /// Words alone.
    pub fn words(words: impl Into<String>) -> Self {
        Self {
            sample: Shown::Nothing,
            words: words.into(),
        }
    }

    /// Where its words begin.
    fn indent(&self) -> f64 {
        match self.sample {
            Shown::Nothing => 0.0,
            _ => SAMPLE + GAP,
        }
    }

    fn lines(&self) -> Vec<String> {
        page::wrap(&self.words, LETTERS, WIDEST + SAMPLE + GAP - self.indent())
    }

    fn height(&self) -> f64 {
        ROW + LINE * (self.lines().len() as f64 - 1.0)
    }
}

/// A key in columns side by side, as many as stand in a width.
pub(super) struct Key<'a> {
    columns: Vec<&'a [Entry]>,
    /// Width and height of the whole.
    pub size: Vector2,
}

/// Between two columns.
const BETWEEN: f64 = 8.0;

impl<'a> Key<'a> {
    /// All entries in one column.
    pub fn column(entries: &'a [Entry]) -> Self {
        Self::of(vec![entries])
    }

    /// As many columns as the width holds, and as low as they can be.
    pub fn strip(entries: &'a [Entry], width: f64) -> Self {
        let mut best = Self::column(entries);
        for count in 2..=entries.len() {
            let columns = filled(entries, count);
            let tried = Self::of(columns);
            if tried.size.x <= width && tried.size.y < best.size.y {
                best = tried;
            }
        }
        best
    }

    fn of(columns: Vec<&'a [Entry]>) -> Self {
        let wide: f64 = columns.iter().map(|c| width(c)).sum();
        let between = BETWEEN * (columns.len().max(1) as f64 - 1.0);
        let high = columns.iter().map(|c| height(c)).fold(0.0, f64::max);
        Self {
            columns,
            size: Vector2::new(wide + between, high),
        }
    }

    /// Draws it with its upper left corner at `corner`.
    pub fn draw(&self, page: &mut Page, corner: Point2) {
        let mut at = corner;
        for column in &self.columns {
            draw(page, at, column);
            at.x += width(column) + BETWEEN;
        }
    }
}

/// Entries in at most so many columns, as low as they can be in their order, to a millimetre.
fn filled(entries: &[Entry], count: usize) -> Vec<&[Entry]> {
    let tallest = entries.iter().map(Entry::height).fold(0.0, f64::max);
    let mut most = (height(entries) / count as f64).max(tallest);
    loop {
        let columns = up_to(entries, most);
        if columns.len() <= count.max(1) {
            return columns;
        }
        most += 1.0;
    }
}

/// Entries in columns of at most a height, each as full as it can be.
fn up_to(entries: &[Entry], most: f64) -> Vec<&[Entry]> {
    let mut columns = Vec::new();
    let mut rest = entries;
    while !rest.is_empty() {
        let mut used = 0.0;
        let fits = rest.iter().take_while(|e| {
            used += e.height();
            used <= most + 1e-9
        });
        let (column, after) = rest.split_at(fits.count().max(1));
        columns.push(column);
        rest = after;
    }
    columns
}

fn height(entries: &[Entry]) -> f64 {
    entries.iter().map(Entry::height).sum()
}

fn width(entries: &[Entry]) -> f64 {
    let width = |e: &Entry| {
        let lines = e.lines();
        let widths = lines.iter().map(|l| lettering::width(l, LETTERS));
        e.indent() + widths.fold(0.0, f64::max)
    };
    entries.iter().map(width).fold(0.0, f64::max)
}

/// Draws one column with its upper left corner at `corner`.
fn draw(page: &mut Page, corner: Point2, entries: &[Entry]) {
    let mut top = corner.y;
    for entry in entries {
        let middle = top - ROW / 2.0;
        let area = Bounds2 {
            low: Point2::new(corner.x, middle - ROW / 2.0 + 0.8),
            high: Point2::new(corner.x + SAMPLE, middle + ROW / 2.0 - 0.8),
        };
        match entry.sample {
            Shown::Line(style) => {
                let ends = [area.low.x, area.high.x].map(|x| Point2::new(x, middle));
                style.line(page, ends[0], ends[1]);
            }
            Shown::Symbol(sample) => sample(page, &area),
            Shown::Nothing => {}
        }
        for (number, line) in entry.lines().iter().enumerate() {
            let at = Point2::new(
                corner.x + entry.indent(),
                middle - 0.38 * LETTERS - LINE * number as f64,
            );
            page.text(Layer::Note, line, LETTERS, (at, Align::Left, 0.0));
        }
        top -= entry.height();
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::plans::style::EDGE;

    #[test]
    fn a_strip_is_as_low_as_its_width_allows() {
        // Eight entries of one line each: 8 × 6.5 mm in one column, 4 rows in two, 1 in eight.
        let entries: Vec<_> = (0..8).map(|_| Entry::line(EDGE, "edge")).collect();
        let one = Key::column(&entries);
        assert!((one.size.y - 52.0).abs() < 1e-9);
        let two = Key::strip(&entries, 2.0 * one.size.x + BETWEEN + 0.1);
        assert!((two.size.y - 26.0).abs() < 1e-9 && two.columns.len() == 2);
        let narrow = Key::strip(&entries, one.size.x);
        assert_eq!(narrow.columns.len(), 1);
        let all: usize = Key::strip(&entries, 1e4)
            .columns
            .iter()
            .map(|c| c.len())
            .sum();
        assert_eq!(all, 8);
    }
}
