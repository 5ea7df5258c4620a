//! A table drawn on a sheet.

use super::columns;
use super::heights::{Heights, Part};
use super::lines::{MOST_LINES, broken};
use crate::drawing::page::{self, LARGE, LETTERS, Page};
use crate::drawing::{Align, Dash, Layer, Pen};
use crate::geometry::{Bounds2, Point2, Vector2};
use crate::table::{Cell, Table};

/// What tables are drawn on.
const LAYER: Layer = Layer::Table;
/// From one line of a cell to the next.
const LINE: f64 = 4.0;
/// Between the text of a cell and the rules above and below it.
const PAD: f64 = 0.9;
/// Left and right of the text of a cell together.
const AIR: f64 = 3.0;
/// How high the title stands over the table.
const TITLE_HEIGHT: f64 = 6.5;
/// Between the table and what is noted below it.
const NOTE_GAP: f64 = 1.5;
/// What stands in a cell that has nothing.
const NOTHING: &str = "–";

/// A table laid out for a width: title, headings, rows with the lines of their cells, notes below.
///
/// Invariant: it is no wider than the width it was made for, and every line of a cell is no wider than the cell but
/// where one letter alone is.
#[derive(Clone, Debug)]
pub struct Grid {
    title: String,
    limit: f64,
    widths: Vec<f64>,
    right: Vec<bool>,
    heading: Vec<Vec<String>>,
    rows: Vec<Vec<Vec<String>>>,
    heights: Heights,
    notes: Vec<String>,
}

impl Grid {
    /// Lays a table out for a width, millimetres. Empty cells become dashes.
    pub fn new(table: &Table, width: f64) -> Self {
        let spell = |cell: &Cell| match cell.spelt() {
            text if text.is_empty() => NOTHING.to_owned(),
            text => page::plain(&text),
        };
        let spelt: Vec<Vec<String>> = table
            .rows
            .iter()
            .map(|row| row.iter().take(table.columns.len()).map(spell).collect())
            .collect();
        let wishes = columns::wishes(table, &spelt, LETTERS, AIR);
        let widths = columns::widths(&wishes, width);
        let lay = |cells: Vec<String>| -> Vec<Vec<String>> {
            let cells = cells.into_iter().zip(&widths);
            cells
                .map(|(c, w)| broken(&c, LETTERS, w - AIR, MOST_LINES))
                .collect()
        };
        let rows: Vec<Vec<Vec<String>>> = spelt.into_iter().map(lay).collect();
        Self {
            title: page::plain(&table.title),
            limit: width,
            heading: lay(table
                .columns
                .iter()
                .map(crate::table::Column::title)
                .collect()),
            heights: rows.iter().map(|row| row_height(row)).collect(),
            rows,
            right: columns::of_figures(table),
            widths,
            notes: Vec::new(),
        }
    }

    /// The same with notes below its last row, broken to the width it was made for.
    #[must_use]
    pub fn with_notes<S: AsRef<str>>(mut self, notes: impl IntoIterator<Item = S>) -> Self {
        let width = self.limit;
        let notes = notes.into_iter();
        self.notes = notes
            .flat_map(|note| broken(note.as_ref(), LETTERS, width, MOST_LINES))
            .collect();
        self
    }

    /// How many rows it has.
    pub fn rows(&self) -> usize {
        self.rows.len()
    }

    /// True when a cell has nothing: the reader must be told what the dash means.
    pub fn has_dashes(&self) -> bool {
        let mut cells = self.rows.iter().flatten();
        cells.any(|lines| lines.len() == 1 && lines[0] == NOTHING)
    }

    /// The width of its rules, millimetres; title and notes may be wider, up to the width it was made for.
    pub fn width(&self) -> f64 {
        self.widths.iter().sum()
    }

    /// The width that title, rules and notes take, millimetres.
    pub fn full_width(&self) -> f64 {
        let title = page::fit(&self.title_of(1), self.limit, &[LARGE, LETTERS]);
        let title = crate::drawing::lettering::width(&title.0, title.1);
        let notes = self
            .notes
            .iter()
            .map(|n| crate::drawing::lettering::width(n, LETTERS));
        notes
            .fold(title.max(self.width()), f64::max)
            .min(self.limit)
    }

    /// Its height with title, headings, all rows and notes, millimetres.
    pub fn height(&self) -> f64 {
        self.height_of(self.whole())
    }

    /// All of its rows.
    pub fn whole(&self) -> Part {
        Part {
            from: 0,
            to: self.rows.len(),
        }
    }

    /// The height of some of its rows with title and headings, and with the notes where they end the table.
    pub fn height_of(&self, part: Part) -> f64 {
        let rows = self.heights.of(part);
        let notes = if part.to >= self.rows.len() && !self.notes.is_empty() {
            NOTE_GAP + LINE * self.notes.len() as f64
        } else {
            0.0
        };
        TITLE_HEIGHT + row_height(&self.heading) + rows + notes
    }

    /// The rows from `from` on that fit a height; `None` where not one does, or, at the end of the table, its notes.
    pub fn part_that_fits(&self, from: usize, height: f64) -> Option<Part> {
        let fits = |part: Part| self.height_of(part) <= height + 1e-9;
        if self.rows.is_empty() {
            return Some(self.whole()).filter(|whole| fits(*whole));
        }
        self.heights.last_that_fits(from, fits)
    }

    /// Draws some of its rows with the upper left corner at `at`; the title says so where they are not the first.
    ///
    /// What stands there is not looked at: see [`Grid::room_on`].
    pub fn draw(&self, page: &mut Page, at: Point2, part: Part) {
        let title = self.title_of(part.from);
        let (title, height) = page::fit(&title, self.limit, &[LARGE, LETTERS]);
        let baseline = at - Vector2::new(0.0, 1.08 * LARGE);
        page.text(LAYER, &title, height, (baseline, Align::Left, 0.0));
        let mut top = at - Vector2::new(0.0, TITLE_HEIGHT);
        let head = top.y;
        self.rule(page, top, Pen::Thick);
        self.draw_row(page, &mut top, &self.heading);
        self.rule(page, top, Pen::Medium);
        let rows = self.rows.iter().enumerate().take(part.to).skip(part.from);
        for (i, row) in rows {
            self.draw_row(page, &mut top, row);
            let ends = i + 1 == part.to;
            self.rule(page, top, if ends { Pen::Thick } else { Pen::Fine });
        }
        self.draw_columns(page, at.x, head, top.y);
        if part.to >= self.rows.len() {
            self.draw_notes(page, top);
        }
        page.reserve(Bounds2 {
            low: at - Vector2::new(0.0, self.height_of(part)),
            high: at + Vector2::new(self.width(), 0.0),
        });
    }

    /// A free place on a sheet for the whole table, `clear` millimetres from everything: the upper left corner, as low
    /// and as far right inside `within` as there is one.
    pub fn room_on(&self, page: &Page, within: &Bounds2, clear: f64) -> Option<Point2> {
        let (width, height) = (self.full_width(), self.height());
        let (wide, high) = (within.width() - width, within.height() - height);
        let steps = |room: f64| {
            (0..)
                .map(|i| 3.0 * f64::from(i))
                .take_while(move |s| *s <= room)
        };
        let mut places = steps(high).flat_map(|up| steps(wide).map(move |left| (left, up)));
        let area = |(left, up): (f64, f64)| {
            let corner = Point2::new(within.high.x - left, within.low.y + up);
            Bounds2 {
                low: corner - Vector2::new(width, 0.0),
                high: corner + Vector2::new(0.0, height),
            }
        };
        let free = places.find(|&p| {
            let grown = crate::drawing::occupancy::grown(&area(p), clear);
            page.taken().is_free(&grown)
        });
        free.map(|p| Point2::new(area(p).low.x, area(p).high.y))
    }

    fn title_of(&self, from: usize) -> String {
        if from == 0 {
            self.title.clone()
        } else {
            format!("{} (continued)", self.title)
        }
    }

    fn rule(&self, page: &mut Page, from: Point2, pen: Pen) {
        let to = from + Vector2::new(self.width(), 0.0);
        page.line(LAYER, pen, Dash::Solid, from, to);
    }

    fn draw_row(&self, page: &mut Page, top: &mut Point2, row: &[Vec<String>]) {
        let mut left = top.x;
        for ((lines, width), right) in row.iter().zip(&self.widths).zip(&self.right) {
            let (x, align) = if *right {
                (left + width - AIR / 2.0, Align::Right)
            } else {
                (left + AIR / 2.0, Align::Left)
            };
            let mut y = top.y - PAD - 1.08 * LETTERS;
            for line in lines {
                page.text(LAYER, line, LETTERS, (Point2::new(x, y), align, 0.0));
                y -= LINE;
            }
            left += width;
        }
        top.y -= row_height(row);
    }

    /// The rules between columns.
    fn draw_columns(&self, page: &mut Page, left: f64, head: f64, foot: f64) {
        let mut x = left;
        let inner = self.widths.len().saturating_sub(1);
        for width in self.widths.iter().take(inner) {
            x += width;
            let (from, to) = (Point2::new(x, head), Point2::new(x, foot));
            page.line(LAYER, Pen::Fine, Dash::Solid, from, to);
        }
    }

    fn draw_notes(&self, page: &mut Page, foot: Point2) {
        let mut at = foot - Vector2::new(0.0, NOTE_GAP + 1.08 * LETTERS);
        for note in &self.notes {
            page.text(LAYER, note, LETTERS, (at, Align::Left, 0.0));
            at.y -= LINE;
        }
    }
}

/// The height of a row with these lines in its cells.
fn row_height(row: &[Vec<String>]) -> f64 {
    let lines = row.iter().map(Vec::len).max().unwrap_or(0).max(1);
    2.0 * PAD + 1.41 * LETTERS + LINE * (lines - 1) as f64
}

#[cfg(test)]
#[path = "grid_tests.rs"]
mod tests;
