//! A table or a part of the key, and where blocks lie on the sheets of the index.

use super::key::Key;
use crate::drawing::page::Page;
use crate::drawing::schedule::{Grid, Part};
use crate::geometry::{Bounds2, Point2};

/// Between two blocks in a column.
const GAP: f64 = 6.0;

/// Something with rows that is drawn in a column.
#[derive(Clone, Debug)]
pub enum Block {
    /// A table.
    Table(Grid),
    /// Part of the key.
    Key(Key),
}

impl Block {
    fn rows(&self) -> usize {
        match self {
            Self::Table(grid) => grid.rows(),
            Self::Key(key) => key.rows(),
        }
    }

    /// The height of some of its rows.
    pub fn height_of(&self, part: Part) -> f64 {
        match self {
            Self::Table(grid) => grid.height_of(part),
            Self::Key(key) => key.height_of(part),
        }
    }

    /// All of its rows.
    pub fn whole(&self) -> Part {
        Part {
            from: 0,
            to: self.rows(),
        }
    }

    fn part_that_fits(&self, from: usize, height: f64) -> Option<Part> {
        match self {
            Self::Table(grid) => grid.part_that_fits(from, height),
            Self::Key(key) => key.part_that_fits(from, height),
        }
    }

    /// Draws some of its rows below a corner.
    pub fn draw(&self, page: &mut Page, at: Point2, part: Part) {
        match self {
            Self::Table(grid) => grid.draw(page, at, part),
            Self::Key(key) => key.draw(page, at, part),
        }
    }
}

/// Rows of a block in their place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Laid {
    /// The number of the block.
    pub block: usize,
    /// Which rows.
    pub part: Part,
    /// The sheet of the index, from 0.
    pub sheet: usize,
    /// The upper left corner.
    pub at: Point2,
}

struct Column {
    sheet: usize,
    area: Bounds2,
    /// Down to where it is filled.
    top: f64,
}

impl Column {
    fn is_fresh(&self) -> bool {
        self.top >= self.area.high.y
    }

    fn start(&self) -> f64 {
        if self.is_fresh() {
            self.top
        } else {
            self.top - GAP
        }
    }

    fn room(&self) -> f64 {
        self.start() - self.area.low.y
    }
}

/// Columns that are filled with blocks.
pub struct Columns<'a> {
    open: Vec<Column>,
    /// The columns of every further sheet.
    further: &'a [Bounds2],
    laid: Vec<Laid>,
}

impl<'a> Columns<'a> {
    /// The columns of the first sheet and those of every further one, of which there is at least one.
    pub fn new(first: &[Bounds2], further: &'a [Bounds2]) -> Self {
        let mut all = Self {
            open: Vec::new(),
            further,
            laid: Vec::new(),
        };
        all.open_sheet(0, first);
        all
    }

    fn open_sheet(&mut self, sheet: usize, areas: &[Bounds2]) {
        let columns = areas.iter().map(|area| Column {
            sheet,
            area: *area,
            top: area.high.y,
        });
        self.open.extend(columns);
    }

    /// Puts a block into the first column, from the preferred one on, that holds it whole; else it begins in the first empty
    /// one and goes on in the next ones.
    pub fn put(&mut self, number: usize, block: &Block, preferred: usize) {
        let whole = block.height_of(block.whole());
        let count = self.open.len();
        let order = (preferred.min(count.saturating_sub(1))..count).chain(0..preferred.min(count));
        let holding = order
            .into_iter()
            .find(|&i| self.open[i].room() >= whole - 1e-9);
        if let Some(column) = holding {
            self.push(number, block, block.whole(), column);
            return;
        }
        let mut from = 0;
        while from < block.rows() || from == 0 {
            let last = self.open.len().checked_sub(1);
            let Some(column) = last.filter(|&i| self.open[i].is_fresh() && self.open[i].sheet > 0)
            else {
                self.turn_over();
                continue;
            };
            let column = self.first_fresh(column);
            let forced = Part {
                from,
                to: block.rows().min(from + 1),
            };
            let part = block
                .part_that_fits(from, self.open[column].room())
                .unwrap_or(forced);
            self.push(number, block, part, column);
            from = part.to.max(from + 1);
        }
    }

    /// The first column of a sheet's empty ones at its end.
    fn first_fresh(&self, last: usize) -> usize {
        let fresh =
            |i: &usize| self.open[*i].is_fresh() && self.open[*i].sheet == self.open[last].sheet;
        (0..=last).rev().take_while(fresh).last().unwrap_or(last)
    }

    fn turn_over(&mut self) {
        let sheet = self.open.last().map_or(0, |c| c.sheet) + 1;
        self.open_sheet(sheet, self.further);
    }

    fn push(&mut self, number: usize, block: &Block, part: Part, column: usize) {
        let column = &mut self.open[column];
        let at = Point2::new(column.area.low.x, column.start());
        column.top = at.y - block.height_of(part);
        self.laid.push(Laid {
            block: number,
            part,
            sheet: column.sheet,
            at,
        });
    }

    /// What was put where.
    pub fn finish(self) -> Vec<Laid> {
        self.laid
    }
}
