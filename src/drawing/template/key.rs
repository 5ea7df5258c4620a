//! The key page: how the pages go together, and what the lines mean.

use super::ink::Ink;
use super::key_map::KeyMap;
use super::layout::{Layout, SMALL};
use super::scene::Kind;
use super::set::{TemplateSet, Tiled};
use crate::drawing::{Align, Layer, Scale, Sheet, lettering};
use crate::geometry::{Bounds2, Point2};
use crate::plan::Plan;

/// The length of the page on a roll, millimetres.
const ON_A_ROLL: f64 = 320.0;

/// Height of the capitals of the list.
const READ: f64 = 3.5;

/// From one line of the list to the next.
const ROW: f64 = 6.0;

/// Draws the key page of the whole counter's pages.
pub(super) fn sheet(plan: &Plan, layout: &Layout, counter: &Tiled, sets: &[TemplateSet]) -> Sheet {
    let mut layout = layout.clone();
    if layout.is_roll() {
        layout.height = ON_A_ROLL;
    }
    let m = layout.margin;
    let room = Bounds2 {
        low: Point2::new(m, m),
        high: Point2::new(layout.width - m, layout.height - m),
    };
    let mut ink = Ink::new(room);
    let head = |ink: &mut Ink, down: f64, text: &str, height: f64| {
        ink.text(
            Layer::Note,
            Point2::new(room.low.x, room.high.y - down),
            text,
            height,
            Align::Left,
        );
    };
    head(&mut ink, 8.0, "Key to the pages", 7.0);
    let title = super::layout::shorten(&plan.design.project.title, READ, room.width());
    head(&mut ink, 16.0, &title, READ);
    let rows = (sets.len() + 1).max(LINES.len() + 1) as f64;
    let foot = Bounds2 {
        low: room.low,
        high: Point2::new(room.high.x, room.low.y + rows * ROW + 2.0),
    };
    list(&mut ink, foot, sets);
    legend(&mut ink, foot);
    let map = Bounds2 {
        low: Point2::new(room.low.x, foot.high.y),
        high: Point2::new(room.high.x, room.high.y - 18.0),
    };
    overview(&mut ink, map, counter);
    Sheet {
        name: "key".to_owned(),
        title: "Key to the pages".to_owned(),
        number: String::new(),
        paper: layout.paper(),
        scale: Scale {
            factor: 0.0,
            name: "not to scale".to_owned(),
        },
        chapter: "",
        ink: crate::drawing::Ink::Black,
        items: ink.into_items(),
        lost: Vec::new(),
    }
}

/// The counter with its pages and their marks.
fn overview(ink: &mut Ink, room: Bounds2, counter: &Tiled) {
    let Some(key) = KeyMap::new(room, &counter.scene, &counter.grid, &counter.kept) else {
        return;
    };
    key.draw(ink, &counter.grid, counter.kept.len(), None);
    let map = &key.map;
    let marks: Vec<_> = counter
        .kept
        .iter()
        .map(|p| (counter.grid.cell(*p), counter.grid.mark(*p)))
        .collect();
    let fits = |height: f64| {
        marks
            .iter()
            .all(|(cell, mark)| lettering::width(mark, height) < cell.width() * map.scale.x * 0.8)
    };
    let height = [5.0, 3.5, 2.5]
        .into_iter()
        .find(|h| fits(*h))
        .unwrap_or(1.8);
    for (cell, mark) in &marks {
        let middle = map.point(cell.centre());
        let at = Point2::new(middle.x, middle.y - height / 2.0);
        ink.text(Layer::Note, at, mark, height, Align::Centre);
    }
}

/// The sets and how many pages each has.
fn list(ink: &mut Ink, room: Bounds2, sets: &[TemplateSet]) {
    let mut y = room.high.y - ROW;
    for set in sets {
        let pages = if set.pages.len() == 1 {
            "page"
        } else {
            "pages"
        };
        let text = format!("{}: {} {pages}", set.title, set.pages.len());
        let text = super::layout::shorten(&text, READ, room.width() / 2.0 - 4.0);
        ink.text(
            Layer::Note,
            Point2::new(room.low.x, y),
            &text,
            READ,
            Align::Left,
        );
        y -= ROW;
    }
    let note = "The map shows the pages of the whole counter.";
    ink.text(
        Layer::Note,
        Point2::new(room.low.x, y),
        note,
        SMALL,
        Align::Left,
    );
}

const LINES: [(Kind, &str); 5] = [
    (Kind::Cut, "cut line"),
    (Kind::Flange, "edge of the flange"),
    (Kind::Centre, "centre line"),
    (Kind::Slab, "edge of the slab"),
    (Kind::Turndown, "turndown, inner line"),
];

fn legend(ink: &mut Ink, room: Bounds2) {
    let left = room.centre().x;
    let mut y = room.high.y - ROW;
    for (kind, name) in LINES {
        let at = |x: f64| Point2::new(left + x, y + READ / 2.0);
        ink.straight(
            (kind.layer(), kind.pen(), kind.dash()),
            at(0.0),
            at(28.0),
            0,
        );
        ink.text(
            Layer::Note,
            Point2::new(left + 32.0, y),
            name,
            READ,
            Align::Left,
        );
        y -= ROW;
    }
}
