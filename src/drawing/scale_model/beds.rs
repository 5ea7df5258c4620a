//! The list of pieces and the beds, side by side on as many sheets as they take.

use super::bed_view;
use super::list;
use super::prints::Prints;
use crate::drawing::Scale;
use crate::drawing::border::Frame;
use crate::drawing::page::Page;
use crate::drawing::schedule::Grid;
use crate::geometry::{Bounds2, Point2};

/// The list may be so wide, millimetres.
const LIST: f64 = 130.0;
/// Between the list and the beds, and between beds.
const GAP: f64 = 8.0;
/// Between the notes and what stands below them.
const HEAD: f64 = 3.0;
/// No more beds on one sheet.
const MOST: usize = 6;
/// A bed is drawn no larger than at this share of its size.
const LARGEST: f64 = 0.5;

/// Draws the sheets.
pub(super) fn draw(frame: &Frame, prints: &Prints, title: &str) -> Vec<Page> {
    let notes = [NOTE.to_owned()];
    let mut room = frame.room(&notes);
    room.high.y -= HEAD;
    let grid = Grid::new(&list::table(prints), LIST.min(room.width() / 2.0));
    let mut pages = Vec::new();
    let (mut row, mut bed) = (Some(0), 0);
    while row.is_some() || bed < prints.plates.len() {
        let mut page = frame.page(title, &Scale::none(), &notes);
        let mut left = room.low.x;
        if let Some(from) = row {
            left += grid.full_width() + GAP;
            let part = grid.part_that_fits(from, room.height());
            if let Some(part) = part {
                grid.draw(&mut page, Point2::new(room.low.x, room.high.y), part);
            }
            row = part.map(|p| p.to).filter(|to| *to < grid.rows());
        }
        let free = Bounds2 {
            low: Point2::new(left, room.low.y),
            high: room.high,
        };
        let count = (prints.plates.len() - bed).min(MOST);
        for (i, area) in areas(count, prints, &free).iter().enumerate() {
            bed_view::draw(&mut page, prints, bed + i, area);
        }
        bed += count;
        pages.push(page);
    }
    pages
}

const NOTE: &str = "Beds seen from above, not to scale, the front of the printer below: the numbers are those of the list. Each plate is one 3MF file, each piece one STL file too; both are in millimetres and lie as they are printed. \
                    Sizes are those of the print. Do not let the print program scale them.";

/// So many areas of one size in a room, in the rows and columns that make them largest.
fn areas(count: usize, prints: &Prints, room: &Bounds2) -> Vec<Bounds2> {
    let [x, y, _] = prints.bed;
    let factor = |columns: usize| {
        let rows = count.div_ceil(columns);
        let width = (room.width() + GAP) / columns as f64 - GAP;
        let height = (room.height() + GAP) / rows as f64 - GAP - bed_view::WORDS;
        (width / x).min(height / y).min(LARGEST)
    };
    let best = (1..=count).max_by(|a, b| factor(*a).total_cmp(&factor(*b)).then(b.cmp(a)));
    let Some(columns) = best else {
        return Vec::new();
    };
    let (wide, high) = (x * factor(columns), y * factor(columns) + bed_view::WORDS);
    let area = |i: usize| {
        let (column, row) = ((i % columns) as f64, (i / columns) as f64);
        let low = room.low.x + column * (wide + GAP);
        let top = room.high.y - row * (high + GAP);
        Bounds2 {
            low: Point2::new(low, top - high),
            high: Point2::new(low + wide, top),
        }
    };
    (0..count).map(area).collect()
}
