//! Tables one after the other on as many sheets as they take.

use super::grid::Grid;
use super::heights::Part;
use crate::geometry::{Bounds2, Point2};

/// Between two tables.
const GAP: f64 = 9.0;

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

/// Where some tables lie, sheet by sheet: one below the other, narrow ones side by side; a table too long for the room that
/// is left goes on beside itself, or begins on the next sheet.
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

/// The parts of a table from a row on, each at most so high; they end where a row is higher.
fn parts(grid: &Grid, from: usize, height: f64) -> Vec<Part> {
    let mut parts = Vec::new();
    let mut next = from;
    while let Some(part) = grid.part_that_fits(next, height) {
        parts.push(part);
        next = part.to;
        if next >= grid.rows() {
            break;
        }
    }
    parts
}

/// True when parts reach the end of their table.
fn end(grid: &Grid, parts: &[Part]) -> bool {
    parts.last().is_some_and(|p| p.to >= grid.rows())
}

/// The parts in which the rest of a table stands in at most so many columns of one height, as low as they can be: one
/// column where it is no higher than `low`.
fn columns(grid: &Grid, from: usize, most: usize, (height, low): (f64, f64)) -> Option<Vec<Part>> {
    let in_columns = |h: f64| {
        let parts = parts(grid, from, h);
        (end(grid, &parts) && parts.len() <= most).then_some(parts)
    };
    let rest = Part {
        from,
        to: grid.rows(),
    };
    let several = usize::from(grid.height_of(rest) > low) + 1;
    let fewest = in_columns(height)?.len().max(several.min(most));
    let (mut low, mut high) = (0.0, height);
    for _ in 0..20 {
        let middle = f64::midpoint(low, high);
        if in_columns(middle).is_some_and(|p| p.len() <= fewest) {
            high = middle;
        } else {
            low = middle;
        }
    }
    in_columns(high)
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

    fn is_fresh(&self) -> bool {
        self.sheets.last().is_none_or(Vec::is_empty)
    }

    fn turn_over(&mut self) {
        self.sheets.push(Vec::new());
        self.shelf = (self.area.high.y, self.area.high.y);
        self.right = self.area.low.x;
    }

    /// Puts a part to the right of what stands on the shelf.
    fn push(&mut self, number: usize, grid: &Grid, part: Part) {
        let at = Point2::new(self.right, self.shelf.0);
        if let Some(sheet) = self.sheets.last_mut() {
            let grid = number;
            sheet.push(Portion { grid, part, at });
        }
        self.right = at.x + grid.full_width() + GAP;
        self.shelf.1 = self.shelf.1.min(at.y - grid.height_of(part));
    }

    /// Beside the table before it, where it fits there whole.
    fn put_beside(&mut self, number: usize, grid: &Grid) -> bool {
        let fits = !self.is_fresh()
            && self.right + grid.full_width() <= self.area.high.x + 1e-9
            && self.shelf.0 - grid.height() >= self.area.low.y - 1e-9;
        if fits {
            self.push(number, grid, grid.whole());
        }
        fits
    }

    /// Below all that is there, or on as many sheets as it takes.
    fn put_below(&mut self, number: usize, grid: &Grid) {
        let abreast = (self.area.width() + GAP + 1e-6) / (grid.full_width() + GAP);
        let abreast = (abreast.floor() as usize).max(1);
        let mut from = 0;
        loop {
            let fresh = self.is_fresh();
            let top = if fresh {
                self.area.high.y
            } else {
                self.shelf.1 - GAP
            };
            let room = top - self.area.low.y;
            let parts = match columns(grid, from, abreast, (room, self.area.height() / 2.0)) {
                Some(parts) => parts,
                None if fresh => self.filled(grid, from, abreast),
                None => {
                    self.turn_over();
                    continue;
                }
            };
            (self.shelf, self.right) = ((top, top), self.area.low.x);
            for part in &parts {
                self.push(number, grid, *part);
            }
            from = parts.last().map_or(grid.rows(), |p| p.to);
            if from >= grid.rows() {
                return;
            }
            self.turn_over();
        }
    }

    /// As much of a table as an empty sheet takes; at least a row.
    fn filled(&self, grid: &Grid, from: usize, abreast: usize) -> Vec<Part> {
        let mut parts = parts(grid, from, self.area.height());
        parts.truncate(abreast);
        if parts.is_empty() {
            let to = grid.rows().min(from + 1);
            parts.push(Part { from, to });
        }
        parts
    }
}
