//! Sticks on sheets.

use super::key;
use super::stick::{Stick, StickSet};
use super::stick_view::{MARKED, StickView};
use crate::design::Project;
use crate::drawing::border::Frame;
use crate::drawing::page::{LARGE, Page};
use crate::drawing::{Align, Layer, Scale, Sheet};
use crate::geometry::{Bounds2, Point2};
use crate::units::Notation;

/// What the sheets are called.
const TITLE: &str = "Sticks and their cuts";
/// What must be said on every sheet.
const NOTE: &str = "Lengths along the sticks are to scale. Mark one end of every stick, measure all its cuts from there and cut in \
     this order. Cut steel is sharp: gloves and eye protection.";
/// Room for the heading of a set, millimetres.
const HEADING: f64 = 7.0;
/// Room kept to the right of sticks for texts: where texts are short, and where they need more.
const BESIDE: [f64; 2] = [9.0, 34.0];

/// What stands on a sheet, from top to bottom.
enum Block<'a> {
    Heading(String),
    Stick(StickView<'a>),
}

impl Block<'_> {
    fn height(&self) -> f64 {
        match self {
            Self::Heading(_) => HEADING,
            Self::Stick(view) => view.height(),
        }
    }
}

/// Draws all sticks, to one scale along them, on as many sheets as they need; no sheets without a stick.
pub fn stick_sheets(project: &Project, sets: &[StickSet]) -> Vec<Sheet> {
    let frame = Frame::for_workshop(project);
    let notes = [NOTE.to_owned()];
    let room = frame.room(&notes);
    let Some(scale) = scale(project.units, sets, &room) else {
        return Vec::new();
    };
    let pages = paginate(project.units, sets, &scale, &room);
    let count = pages.len();
    let sheets = pages.iter().zip(1..).map(|(blocks, number)| {
        let mut page = frame.page(TITLE, &scale, &notes);
        draw(&mut page, blocks, &room);
        frame.draw_foot(&mut page, TITLE, (number, count), &scale);
        let name = format!("sticks-{number}");
        page.finish(name, TITLE.to_owned(), format!("W-{number}"), scale.clone())
    });
    sheets.collect()
}

/// The largest standard scale at which every stick and its texts fit across; `None` without a stick.
fn scale(notation: Notation, sets: &[StickSet], room: &Bounds2) -> Option<Scale> {
    let sticks = || sets.iter().flat_map(|set| &set.sticks);
    let longest = sticks().map(|s| s.length.mm()).reduce(f64::max)?;
    let fitting = |beside: f64| {
        let width = room.width() - MARKED - beside;
        Scale::fitting(notation, (longest, 1.0), (width, f64::INFINITY))
    };
    let [little, much] = BESIDE;
    let scale = fitting(little);
    let limit = limit(room);
    let reach = |stick| StickView::new(stick, None, notation, (scale.factor, limit)).reach();
    let fits = sticks().all(|stick| reach(stick) <= limit);
    Some(if fits { scale } else { fitting(much) })
}

/// How far from the marked end texts may reach: a little past the room, which ends well inside the border.
fn limit(room: &Bounds2) -> f64 {
    room.width() - MARKED + 3.0
}

/// Blocks page by page; a heading never stands alone at a page's foot, and is told again where its set goes on.
fn paginate<'a>(
    notation: Notation,
    sets: &'a [StickSet],
    scale: &Scale,
    room: &Bounds2,
) -> Vec<Vec<Block<'a>>> {
    let height = room.height() - key::HIGH;
    let measure = (scale.factor, limit(room));
    let mut pages: Vec<Vec<Block>> = vec![Vec::new()];
    let mut left = height;
    for set in sets.iter().filter(|s| !s.sticks.is_empty()) {
        let mut heading = Some(set.title.clone());
        for (i, stick) in set.sticks.iter().enumerate() {
            let like = like(stick, &set.sticks[..i]);
            let block = Block::Stick(StickView::new(stick, like, notation, measure));
            let needed = block.height() + heading.as_ref().map_or(0.0, |_| HEADING);
            let is_empty = pages.last().is_none_or(Vec::is_empty);
            if needed > left && !is_empty {
                pages.push(Vec::new());
                left = height;
                heading = heading.or_else(|| Some(format!("{}, continued", set.title)));
            }
            if let Some(page) = pages.last_mut() {
                let heading = heading.take().map(Block::Heading);
                for block in heading.into_iter().chain([block]) {
                    left -= block.height();
                    page.push(block);
                }
            }
        }
    }
    pages
}

/// The number of the first of some sticks that is cut at the same places.
fn like(stick: &Stick, earlier: &[Stick]) -> Option<u32> {
    let places =
        |s: &Stick| -> Vec<[f64; 2]> { s.cuts.iter().map(|c| [c.from.mm(), c.to.mm()]).collect() };
    let same = |other: &&Stick| other.length == stick.length && places(other) == places(stick);
    earlier.iter().find(same).map(|s| s.number)
}

fn draw(page: &mut Page, blocks: &[Block], room: &Bounds2) {
    let left = room.low.x + MARKED;
    key::sticks(page, Point2::new(left, room.high.y - 1.0));
    let mut top = room.high.y - key::HIGH;
    for block in blocks {
        match block {
            Block::Heading(text) => {
                let stand = (Point2::new(left, top - 4.6), Align::Left, 0.0);
                page.text(Layer::Note, text, LARGE, stand);
            }
            Block::Stick(view) => view.draw(page, Point2::new(left, top)),
        }
        top -= block.height();
    }
}
