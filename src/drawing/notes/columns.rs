//! Notes in columns.

use crate::drawing::page::{LARGE, LETTERS, Page};
use crate::drawing::schedule::broken;
use crate::drawing::{Align, Layer};
use crate::geometry::{Bounds2, Point2};

/// From one line to the next.
const LINE: f64 = 4.0;
/// Above a note.
const ABOVE: f64 = 1.0;
/// Above a heading that does not begin a column, and the room of a heading.
const HEADING: (f64, f64) = (3.5, 5.5);
/// The most lines of a note.
const MOST_LINES: usize = 20;
/// What the lines of a note stand in by, for its number.
const INDENT: f64 = 8.0;
/// A column of lines that read well, and the room between two.
const COLUMN: (f64, f64) = (112.0, 9.0);

/// A heading, or a note in lines.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Block {
    /// A heading: never the last of its column.
    Heading(String),
    /// A note with its number.
    Note(usize, Vec<String>),
}

/// Columns of equal width in an area.
#[derive(Clone, Copy, Debug)]
pub struct Columns {
    area: Bounds2,
    count: usize,
    width: f64,
}

impl Columns {
    /// As many columns as the area takes.
    pub fn new(area: &Bounds2) -> Self {
        let count = ((area.width() + COLUMN.1) / (COLUMN.0 + COLUMN.1))
            .floor()
            .clamp(1.0, 12.0);
        Self {
            area: *area,
            count: count as usize,
            width: (area.width() - COLUMN.1 * (count - 1.0)) / count,
        }
    }

    /// The lines of a note.
    pub fn lines(&self, text: &str) -> Vec<String> {
        broken(text, LETTERS, self.width - INDENT, MOST_LINES)
    }

    /// The blocks of each column, as many columns as they take; where one sheet takes them all, its columns end about
    /// equally low.
    pub fn share(&self, blocks: &[Block]) -> Vec<Vec<Block>> {
        let whole = filled(blocks, self.area.height());
        if whole.len() > self.count {
            return whole;
        }
        let (mut low, mut high) = (0.0, self.area.height());
        for _ in 0..20 {
            let middle = f64::midpoint(low, high);
            let columns = filled(blocks, middle);
            if columns.len() <= self.count && columns.iter().all(|c| height(c) <= middle) {
                high = middle;
            } else {
                low = middle;
            }
        }
        filled(blocks, high)
    }

    /// How many sheets so many columns take.
    pub fn sheets(&self, columns: usize) -> usize {
        columns.div_ceil(self.count).max(1)
    }

    /// Draws the columns of one sheet.
    pub fn draw(&self, page: &mut Page, columns: &[Vec<Block>], sheet: usize) {
        let own = columns.iter().skip(sheet * self.count).take(self.count);
        for (i, column) in own.enumerate() {
            let left = self.area.low.x + (self.width + COLUMN.1) * i as f64;
            let mut top = Point2::new(left, self.area.high.y);
            for (k, block) in column.iter().enumerate() {
                top.y -= draw_block(page, block, top, k == 0);
            }
        }
    }
}

/// Draws a block below a point; how much room it takes.
fn draw_block(page: &mut Page, block: &Block, top: Point2, first: bool) -> f64 {
    let taken = room(block, first);
    match block {
        Block::Heading(text) => {
            let at = Point2::new(top.x, top.y - taken + HEADING.1 - 1.08 * LARGE);
            page.text(Layer::Note, text, LARGE, (at, Align::Left, 0.0));
        }
        Block::Note(number, lines) => {
            let mut y = top.y - ABOVE - 1.08 * LETTERS;
            let at = Point2::new(top.x + INDENT - 2.0, y);
            page.text(
                Layer::Note,
                &number.to_string(),
                LETTERS,
                (at, Align::Right, 0.0),
            );
            for line in lines {
                let at = Point2::new(top.x + INDENT, y);
                page.text(Layer::Note, line, LETTERS, (at, Align::Left, 0.0));
                y -= LINE;
            }
        }
    }
    taken
}

fn room(block: &Block, first: bool) -> f64 {
    match block {
        Block::Heading(_) if first => HEADING.1,
        Block::Heading(_) => HEADING.0 + HEADING.1,
        Block::Note(_, lines) => ABOVE + LINE * lines.len() as f64,
    }
}

fn height(column: &[Block]) -> f64 {
    column
        .iter()
        .enumerate()
        .map(|(i, b)| room(b, i == 0))
        .sum()
}

/// Columns filled one after the other up to a height; a block that is higher has a column of its own.
fn filled(blocks: &[Block], most: f64) -> Vec<Vec<Block>> {
    let mut columns: Vec<Vec<Block>> = vec![Vec::new()];
    for (i, block) in blocks.iter().enumerate() {
        let Some(last) = columns.last_mut() else {
            break;
        };
        let first = last.is_empty();
        let mut needed = height(last) + room(block, first);
        if let (Block::Heading(_), Some(next)) = (block, blocks.get(i + 1)) {
            needed += room(next, false);
        }
        if needed <= most || first {
            last.push(block.clone());
        } else {
            columns.push(vec![block.clone()]);
        }
    }
    columns
}
