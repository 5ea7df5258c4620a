//! Boards on sheets of paper.

use super::board::BoardSet;
use super::board_view::BoardView;
use super::key;
use crate::design::Project;
use crate::drawing::border::Frame;
use crate::drawing::page::{LARGE, Page};
use crate::drawing::{Align, Layer, Scale, Sheet};
use crate::geometry::{Bounds2, Point2};
use crate::units::Notation;

/// What the sheets are called.
const TITLE: &str = "Boards and plywood, laid out for cutting";
/// What must be said on every sheet.
const NOTE: &str = "Sheets and pieces are to scale; sides are along × across the sheet. Cut in the order of the numbers. Cutting cement \
     board makes silica dust: score and snap it, or cut it wet, with a mask.";
/// Room for the heading of a set, millimetres.
const HEADING: f64 = 7.0;
/// Between two boards side by side.
const BETWEEN: f64 = 6.0;

/// What stands on a sheet, with its upper left corner from the room's.
enum Block<'a> {
    Heading(String),
    Board(BoardView<'a>),
}

/// A block and where it stands: to the right and down.
type Put<'a> = (f64, f64, Block<'a>);

/// Draws all boards to one scale, on as many sheets of paper as they need; none without a board.
pub fn board_sheets(project: &Project, sets: &[BoardSet]) -> Vec<Sheet> {
    let frame = Frame::new(project);
    let notes = [NOTE.to_owned()];
    let room = frame.room(&notes);
    let Some(scale) = scale(project.units, sets, &room) else {
        return Vec::new();
    };
    let size = (room.width(), room.height() - key::HIGH);
    let pages = paginate(project.units, sets, &scale, size);
    let count = pages.len();
    let sheets = pages.iter().zip(1..).map(|(blocks, number)| {
        let mut page = frame.page(TITLE, &scale, &notes);
        draw(&mut page, blocks, &room);
        frame.draw_foot(&mut page, TITLE, (number, count), &scale);
        let name = format!("boards-{number}");
        page.finish(name, TITLE.to_owned(), format!("W-{number}"), scale.clone())
    });
    sheets.collect()
}

/// The largest standard scale at which two of the largest boards stand side by side, or one where the narrowest piece
/// would else be too narrow for its mark; `None` without a board.
fn scale(notation: Notation, sets: &[BoardSet], room: &Bounds2) -> Option<Scale> {
    let boards = || sets.iter().flat_map(|s| &s.boards);
    let longest = boards().map(|b| b.length.mm()).reduce(f64::max)?;
    let widest = boards().map(|b| b.width.mm()).reduce(f64::max)?;
    let pieces = boards().flat_map(|b| &b.pieces);
    let sides = pieces.map(|p| p.area.dx.min(p.area.dy).mm());
    let narrowest = sides.reduce(f64::min).unwrap_or(longest);
    let (width, height) = (room.width(), room.height() - key::HIGH - HEADING);
    let fitting = |columns: f64| {
        let free = (width - BETWEEN * (columns - 1.0)) / columns - BoardView::BESIDE;
        let free = (free, height - BoardView::ABOVE_AND_BELOW);
        Scale::fitting(notation, (longest, widest), free)
    };
    let two = fitting(2.0);
    let is_legible = narrowest * two.factor >= BoardView::NARROWEST;
    Some(if is_legible { two } else { fitting(1.0) })
}

/// Blocks page by page: boards side by side in rows, a new row for each set.
fn paginate<'a>(
    notation: Notation,
    sets: &'a [BoardSet],
    scale: &Scale,
    (width, height): (f64, f64),
) -> Vec<Vec<Put<'a>>> {
    let mut pages: Vec<Vec<Put>> = vec![Vec::new()];
    let mut top = 0.0;
    for set in sets.iter().filter(|s| !s.boards.is_empty()) {
        let views = set
            .boards
            .iter()
            .map(|b| BoardView::new(b, set.grain, notation, scale.factor));
        let mut heading = Some(set.title.clone());
        for row in rows(views, width) {
            let high = row.iter().map(BoardView::height).fold(0.0, f64::max);
            let needed = high + heading.as_ref().map_or(0.0, |_| HEADING);
            let is_empty = pages.last().is_none_or(Vec::is_empty);
            if top + needed > height && !is_empty {
                pages.push(Vec::new());
                top = 0.0;
                heading = heading.or_else(|| Some(format!("{}, continued", set.title)));
            }
            let mut blocks: Vec<Put> = Vec::new();
            if let Some(text) = heading.take() {
                blocks.push((0.0, top, Block::Heading(text)));
                top += HEADING;
            }
            let mut right = 0.0;
            for view in row {
                let wide = view.width();
                blocks.push((right, top, Block::Board(view)));
                right += wide + BETWEEN;
            }
            top += high;
            if let Some(page) = pages.last_mut() {
                page.extend(blocks);
            }
        }
    }
    pages
}

/// As many side by side as the width takes.
fn rows<'a>(views: impl Iterator<Item = BoardView<'a>>, width: f64) -> Vec<Vec<BoardView<'a>>> {
    let mut rows: Vec<Vec<BoardView>> = Vec::new();
    let mut taken = 0.0;
    for view in views {
        let wide = view.width();
        match rows.last_mut() {
            Some(row) if taken + BETWEEN + wide <= width => {
                taken += BETWEEN + wide;
                row.push(view);
            }
            _ => {
                taken = wide;
                rows.push(vec![view]);
            }
        }
    }
    rows
}

fn draw(page: &mut Page, blocks: &[Put], room: &Bounds2) {
    key::boards(page, Point2::new(room.low.x, room.high.y - 1.0));
    let high = room.high.y - key::HIGH;
    for (right, down, block) in blocks {
        let at = Point2::new(room.low.x + right, high - down);
        match block {
            Block::Heading(text) => {
                let stand = (Point2::new(at.x, at.y - 4.6), Align::Left, 0.0);
                page.text(Layer::Note, text, LARGE, stand);
            }
            Block::Board(view) => view.draw(page, at),
        }
    }
}
