//! Tables one after the other on as many sheets as they take.

use super::grid::{Grid, Part};
use crate::geometry::{Bounds2, Point2};

/// Between two tables.
const GAP: f64 = 9.0;
/// A table begins on a sheet only where as many of its rows fit, or all of them.
const FEWEST: usize = 2;

/// Rows of one table with their place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Portion {
    /// The number of the table.
    pub grid: usize,
    /// Which rows.
    pub part: Part,
    /// The upper left corner.
    pub at: Point2,
}

/// Where some tables lie, sheet by sheet: one below the other, narrow ones side by side.
///
/// Invariant: every row of every table is on one sheet, in its order; no two portions overlap; all lie in the area, but
/// where a single row is higher than it.
pub fn flow(grids: &[Grid], area: &Bounds2) -> Vec<Vec<Portion>> {
    let mut flow = Flow::new(area);
    for (number, grid) in grids.iter().enumerate() {
        if !flow.put_beside(number, grid) {
            flow.put_below(number, grid);
        }
    }
    flow.sheets
}

struct Flow<'a> {
    area: &'a Bounds2,
    sheets: Vec<Vec<Portion>>,
    /// Top of the row of tables that is being filled, and its lowest end.
    shelf: (f64, f64),
    /// Where the next table beside it would begin.
    right: f64,
}

impl<'a> Flow<'a> {
    fn new(area: &'a Bounds2) -> Self {
        Self {
            area,
            sheets: vec![Vec::new()],
            shelf: (area.high.y, area.high.y),
            right: area.low.x,
        }
    }

    fn push(&mut self, grid: usize, part: Part, at: Point2, size: (f64, f64)) {
        if let Some(sheet) = self.sheets.last_mut() {
            sheet.push(Portion { grid, part, at });
        }
        self.right = at.x + size.0 + GAP;
        self.shelf = (at.y, self.shelf.1.min(at.y - size.1));
    }

    /// Beside the table before it, where it fits there whole.
    fn put_beside(&mut self, number: usize, grid: &Grid) -> bool {
        let size = (grid.full_width(), grid.height());
        let starts = self.sheets.last().is_some_and(|s| !s.is_empty());
        let fits = starts
            && self.right + size.0 <= self.area.high.x + 1e-9
            && self.shelf.0 - size.1 >= self.area.low.y - 1e-9;
        if fits {
            let at = Point2::new(self.right, self.shelf.0);
            self.push(number, grid.whole(), at, size);
        }
        fits
    }

    /// Below all that is there, on as many sheets as it takes.
    fn put_below(&mut self, number: usize, grid: &Grid) {
        let mut from = 0;
        loop {
            let fresh = self.sheets.last().is_none_or(Vec::is_empty);
            let top = if fresh {
                self.area.high.y
            } else {
                self.shelf.1 - GAP
            };
            let room = top - self.area.low.y;
            let fewest = FEWEST.min(grid.rows() - from);
            let fitting = grid.part_that_fits(from, room);
            let fitting = fitting.filter(|p| p.to - p.from >= fewest || fresh);
            let forced = Part {
                from,
                to: grid.rows().min(from + 1),
            };
            let Some(part) = fitting.or(fresh.then_some(forced)) else {
                self.sheets.push(Vec::new());
                self.shelf = (self.area.high.y, self.area.high.y);
                continue;
            };
            let size = (grid.full_width(), grid.height_of(part));
            self.shelf.1 = top;
            self.push(number, part, Point2::new(self.area.low.x, top), size);
            from = part.to;
            if from >= grid.rows() {
                return;
            }
            self.sheets.push(Vec::new());
            self.shelf = (self.area.high.y, self.area.high.y);
        }
    }
}
