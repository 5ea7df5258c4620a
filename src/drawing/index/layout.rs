//! Where everything lies on the sheets of the index.

use super::block::{Block, Columns, Laid};
use super::{entries, facts};
use crate::drawing::border::Frame;
use crate::geometry::{Bounds2, Point2};
use crate::parts::Assembly;
use crate::plan::Plan;

/// Width of a column of tables.
const COLUMN: f64 = 112.0;
/// Between columns.
const GAP: f64 = 9.0;
/// The site plan is at least so wide, and takes at least this share of the sheet's height.
const SITE: (f64, f64) = (125.0, 0.42);
/// On a small sheet it may be as narrow as this beside a column.
const NARROWEST: f64 = 100.0;

/// One row of the list of sheets: number, title, scale.
pub type Row = (usize, String, String);

/// The blocks, their places, and the site plan's.
#[derive(Clone, Debug)]
pub struct Layout {
    /// Where the site plan lies on the first sheet.
    pub site: Bounds2,
    /// Tables and keys.
    pub blocks: Vec<Block>,
    /// Where their rows lie.
    pub laid: Vec<Laid>,
    /// How many sheets that takes.
    pub sheets: usize,
}

/// Lays the index out for the sheets' room.
pub fn layout(plan: &Plan, assembly: &Assembly, frame: &Frame, rows: &[Row]) -> Layout {
    let room = frame.room(&[]);
    let width = COLUMN.min(room.width());
    // Which column each is to stand in: below the site plan, then to its right.
    let blocks = [
        (0, Block::Table(facts::island(plan, assembly, width))),
        (1, Block::Table(facts::sheets(rows, width))),
        (1, Block::Table(facts::around(plan, width))),
        (1, Block::Table(facts::levels(plan, width))),
        (2, Block::Key(entries::lines(width))),
        (2, Block::Key(entries::hatches(assembly, width))),
        (2, Block::Key(entries::signs(plan, width))),
    ];
    let below: f64 = blocks
        .iter()
        .filter(|(column, _)| *column == 0)
        .map(|(_, b)| b.height_of(b.whole()) + GAP)
        .sum();
    // On a small sheet the site plan is a little narrower rather than alone.
    let narrow = (room.width() - COLUMN - GAP).max(NARROWEST);
    let beside = ((room.width() - SITE.0.min(narrow)) / (COLUMN + GAP))
        .floor()
        .clamp(0.0, 2.0);
    let left = room.width() - beside * (COLUMN + GAP);
    let high = (room.height() - below).max(room.height() * SITE.1);
    let site = Bounds2 {
        low: Point2::new(room.low.x, room.high.y - high),
        high: Point2::new(room.low.x + left, room.high.y),
    };
    let mut first = vec![Bounds2 {
        low: room.low,
        high: Point2::new(site.high.x, site.low.y - GAP),
    }];
    first.extend(columns(&room, site.high.x + GAP, beside));
    let count = ((room.width() + GAP) / (COLUMN + GAP))
        .floor()
        .clamp(1.0, 12.0);
    let further: Vec<_> = columns(&room, room.low.x, count).collect();
    let mut filled = Columns::new(&first, &further);
    for (number, (preferred, block)) in blocks.iter().enumerate() {
        filled.put(number, block, *preferred);
    }
    let laid = filled.finish();
    let sheets = laid.iter().map(|l| l.sheet + 1).max().unwrap_or(1);
    Layout {
        site,
        blocks: blocks.into_iter().map(|(_, b)| b).collect(),
        laid,
        sheets,
    }
}

/// So many columns of the room's height from a left side on.
fn columns(room: &Bounds2, left: f64, count: f64) -> impl Iterator<Item = Bounds2> {
    let (low, high) = (room.low.y, room.high.y);
    (0..count as u32).map(move |i| {
        let x = left + f64::from(i) * (COLUMN + GAP);
        Bounds2 {
            low: Point2::new(x, low),
            high: Point2::new(x + COLUMN, high),
        }
    })
}
