//! Boards on sheets of paper.

use super::board::{Board, BoardSet};
use super::board_view::BoardView;
use super::key;
use crate::design::Project;
use crate::drawing::border::Frame;
use crate::drawing::page::{LARGE, Page};
use crate::drawing::{Align, Layer, Scale, Sheet};
use crate::geometry::{Bounds2, Point2};
use crate::units::Notation;

/// What the sheets are called.
const TITLE: &str = "Sheets, laid out for cutting";
/// What must be said on every sheet.
const NOTE: &str = "Sheets and pieces are to scale; sides are along × across the sheet. Cut in the order of the numbers; what else is done to a piece, the table of sheet layouts tells. Cutting cement \
     board makes silica dust: score and snap it, or cut it wet, with a respirator.";
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

/// Draws all boards, each set to a scale of its own, on as many sheets of paper as they need; none without a board.
pub fn board_sheets(project: &Project, sets: &[BoardSet]) -> Vec<Sheet> {
    let frame = Frame::for_workshop(project);
    let notes = [NOTE.to_owned()];
    let room = frame.room(&notes);
    let pages = sets.iter().flat_map(|set| {
        let manner = manner(project.units, set, &room);
        let pages = manner.map(|manner| {
            let pages = paginate(project.units, set, &manner, &room);
            let scale = manner.scale;
            pages.into_iter().map(move |blocks| (blocks, scale.clone()))
        });
        pages.into_iter().flatten()
    });
    let pages: Vec<_> = pages.collect();
    let count = pages.len();
    let sheets = pages.iter().zip(1..).map(|((blocks, scale), number)| {
        let mut page = frame.page(TITLE, scale, &notes);
        draw(&mut page, blocks, &room);
        frame.draw_foot(&mut page, TITLE, (number, count), scale);
        let name = format!("boards-{number}");
        page.finish(name, TITLE.to_owned(), format!("W-{number}"), scale.clone())
    });
    sheets.collect()
}

/// How the boards of a set are drawn.
#[derive(Clone, Debug)]
struct Manner {
    scale: Scale,
    /// How wide what is told beside a board may be; `None` when it is told below.
    beside: Option<f64>,
}

impl Manner {
    fn view<'a>(&self, notation: Notation, set: &BoardSet, board: &'a Board) -> BoardView<'a> {
        BoardView::new(board, set.grain, notation, self.scale.factor, self.beside)
    }
}

/// At the largest standard scale at which two of the largest boards stand side by side; or, where the narrowest piece would
/// then be too narrow for its mark, one, with what is told of it in a column to its right. `None` without a board.
fn manner(notation: Notation, set: &BoardSet, room: &Bounds2) -> Option<Manner> {
    let boards = || set.boards.iter();
    let longest = boards().map(|b| b.length.mm()).reduce(f64::max)?;
    let widest = boards().map(|b| b.width.mm()).reduce(f64::max)?;
    let pieces = boards().flat_map(|b| &b.pieces);
    let sides = pieces.map(|p| p.area.dx.min(p.area.dy).mm());
    let narrowest = sides.reduce(f64::min).unwrap_or(longest);
    let (width, height) = (room.width(), room.height() - key::HIGH - HEADING);
    let fitting = |free: f64, below: f64| {
        let free = (
            free - BoardView::BESIDE,
            height - BoardView::ABOVE_AND_BELOW - below,
        );
        Scale::fitting(notation, (longest, widest), free)
    };
    let half = (width - BETWEEN) / 2.0;
    let is_legible = narrowest * fitting(half, 0.0).factor >= BoardView::NARROWEST;
    let manner = |below: f64| {
        if is_legible {
            return Manner {
                scale: fitting(half, below),
                beside: None,
            };
        }
        let scale = fitting(width - BoardView::COLUMN, below);
        let beside = width - BoardView::BESIDE - longest * scale.factor;
        Manner {
            scale,
            beside: Some(beside.max(BoardView::COLUMN)),
        }
    };
    let highest = |manner: &Manner| {
        let views = boards().map(|b| manner.view(notation, set, b));
        views.map(|v| v.height()).fold(0.0, f64::max)
    };
    // What is told takes room from a board; a smaller one may tell more.
    let mut below = 0.0;
    let mut found = manner(below);
    for _ in 0..4 {
        let over = highest(&found) - height;
        if over <= 0.0 {
            break;
        }
        below += over;
        found = manner(below);
    }
    Some(found)
}

/// The boards of a set page by page, side by side in rows, each page under a heading.
fn paginate<'a>(
    notation: Notation,
    set: &'a BoardSet,
    manner: &Manner,
    room: &Bounds2,
) -> Vec<Vec<Put<'a>>> {
    let (width, height) = (room.width(), room.height() - key::HIGH);
    let views = set.boards.iter().map(|b| manner.view(notation, set, b));
    let mut pages: Vec<Vec<Put>> = Vec::new();
    let mut top = height;
    for row in rows(views, width) {
        let high = row.iter().map(BoardView::height).fold(0.0, f64::max);
        if top + high > height {
            let title = if pages.is_empty() {
                set.title.clone()
            } else {
                format!("{}, continued", set.title)
            };
            pages.push(vec![(0.0, 0.0, Block::Heading(title))]);
            top = HEADING;
        }
        let mut right = 0.0;
        for view in row {
            let wide = view.width();
            let block = (right, top, Block::Board(view));
            if let Some(page) = pages.last_mut() {
                page.push(block);
            }
            right += wide + BETWEEN;
        }
        top += high;
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
            Block::Board(view) => {
                view.draw(page, at);
            }
        }
    }
}
