//! The steps in columns, on as many sheets as they take.

use super::block::Block;
use super::values::WorkSheet;
use crate::drawing::page::Page;
use crate::geometry::{Bounds2, Point2};

/// A column is no narrower than this: about seventy letters.
const COLUMN: f64 = 108.0;
/// Between columns, and between steps.
const GAP: f64 = 8.0;
const BETWEEN: f64 = 3.5;

/// Lines of one step in their place.
#[derive(Clone, Copy, Debug)]
struct Portion {
    block: usize,
    from: usize,
    to: usize,
    column: usize,
    /// Below the top of the room.
    down: f64,
}

/// All steps laid out.
///
/// Invariant: a step is parted only where it is higher than a column.
#[derive(Clone, Debug)]
pub struct Checklist {
    room: Bounds2,
    width: f64,
    abreast: usize,
    blocks: Vec<Block>,
    portions: Vec<Portion>,
}

impl Checklist {
    /// The steps in such a room.
    pub fn new(work: &WorkSheet, room: Bounds2) -> Self {
        let abreast = ((room.width() + GAP) / (COLUMN + GAP))
            .floor()
            .clamp(1.0, 20.0);
        let width = (room.width() + GAP) / abreast - GAP;
        let tasks = work.tasks.iter().enumerate();
        let blocks: Vec<Block> = tasks.map(|(i, t)| Block::new(i + 1, t, width)).collect();
        let portions = flow(&blocks, room.height());
        Self {
            room,
            width,
            abreast: abreast as usize,
            blocks,
            portions,
        }
    }

    /// How many sheets it takes.
    pub fn sheets(&self) -> usize {
        let columns = self.portions.last().map_or(0, |p| p.column + 1);
        columns.div_ceil(self.abreast)
    }

    /// Draws one of them.
    pub fn draw(&self, page: &mut Page, sheet: usize) {
        let own = self
            .portions
            .iter()
            .filter(|p| p.column / self.abreast == sheet);
        for portion in own {
            let column = (portion.column % self.abreast) as f64;
            let x = self.room.low.x + column * (self.width + GAP);
            let at = Point2::new(x, self.room.high.y - portion.down);
            if let Some(block) = self.blocks.get(portion.block) {
                block.draw(page, at, portion.from, portion.to);
            }
        }
    }
}

/// Steps one below the other, column by column.
fn flow(blocks: &[Block], high: f64) -> Vec<Portion> {
    let mut portions = Vec::new();
    let (mut column, mut down) = (0, 0.0);
    for (number, block) in blocks.iter().enumerate() {
        let (mut from, count) = (0, block.lines());
        while from < count {
            let left = high - down;
            let fits = block.fitting(from, left);
            let whole = block.height(from, count) <= high;
            if down > 0.0 && (fits <= from || (fits < count && whole)) {
                (column, down) = (column + 1, 0.0);
                continue;
            }
            let to = fits.max(from + 1);
            portions.push(Portion {
                block: number,
                from,
                to,
                column,
                down,
            });
            down += block.height(from, to) + BETWEEN;
            from = to;
        }
    }
    portions
}
