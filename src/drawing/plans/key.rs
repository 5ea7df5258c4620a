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

/// How wide and high a key is.
pub(super) fn size(entries: &[Entry]) -> Vector2 {
    let width = |e: &Entry| {
        let lines = e.lines();
        let widths = lines.iter().map(|l| lettering::width(l, LETTERS));
        e.indent() + widths.fold(0.0, f64::max)
    };
    let widest = entries.iter().map(width).fold(0.0, f64::max);
    let height = entries.iter().map(Entry::height).sum();
    if entries.is_empty() {
        return Vector2::zeros();
    }
    Vector2::new(widest, height)
}

/// Draws a key with its upper left corner at `corner`.
pub(super) fn draw(page: &mut Page, corner: Point2, entries: &[Entry]) {
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
