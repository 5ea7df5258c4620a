//! What the signs mean.

use super::stick::CutEnd;
use super::stick_view::{fill, foot_sign, outline, sign};
use crate::drawing::hatch::hatch;
use crate::drawing::page::{LETTERS, Page};
use crate::drawing::{Align, Layer, Pen, lettering};
use crate::geometry::{Bounds2, Point2};

/// Room for a key, from top to bottom, millimetres.
pub(super) const HIGH: f64 = 8.0;
/// A sign's box.
const BOX: (f64, f64) = (8.0, 5.0);

/// One entry: what draws the sign into its box, and what it means.
type Entry = (fn(&mut Page, &Bounds2), &'static str);

const STICKS: [Entry; 6] = [
    (marked, "marked end, cuts are measured from it"),
    (square, "square"),
    (tab, "tab: slit the flanges, fold the web"),
    (mitre, "mitre, see its elevation"),
    (foot, "foot: keep it on this end"),
    (offcut, "offcut"),
];

const BOARDS: [Entry; 2] = [
    (offcut, "offcut"),
    (
        number,
        "cuts in their order, each from edge to edge of what is left",
    ),
];

/// The key of sticks, from its upper left corner.
pub(super) fn sticks(page: &mut Page, at: Point2) {
    draw(page, at, &STICKS);
}

/// The key of boards, from its upper left corner.
pub(super) fn boards(page: &mut Page, at: Point2) {
    draw(page, at, &BOARDS);
}

fn draw(page: &mut Page, at: Point2, entries: &[Entry]) {
    let mut x = at.x;
    for (drawn, text) in entries {
        let area = Bounds2 {
            low: Point2::new(x, at.y - BOX.1),
            high: Point2::new(x + BOX.0, at.y),
        };
        drawn(page, &area);
        let stand = Point2::new(x + BOX.0 + 1.5, at.y - BOX.1 + 1.25);
        page.text(Layer::Note, text, LETTERS, (stand, Align::Left, 0.0));
        x = stand.x + lettering::width(text, LETTERS) + 7.0;
    }
}

fn marked(page: &mut Page, area: &Bounds2) {
    outline(page, area, Pen::Medium);
    let (x, low, high) = (area.low.x, area.low.y, area.high.y);
    fill(
        page,
        &[(x - 1.2, low), (x, low), (x, high), (x - 1.2, high)],
    );
}

fn square(page: &mut Page, area: &Bounds2) {
    outline(page, area, Pen::Medium);
}

fn tab(page: &mut Page, area: &Bounds2) {
    outline(page, area, Pen::Medium);
    sign(page, CutEnd::Tab, (area.low.x, 2.6), area);
}

fn mitre(page: &mut Page, area: &Bounds2) {
    outline(page, area, Pen::Medium);
    sign(page, CutEnd::Mitre, (area.low.x, 2.6), area);
}

fn foot(page: &mut Page, area: &Bounds2) {
    outline(page, area, Pen::Medium);
    foot_sign(page, area.low.x, 1.8, area.low.y);
}

fn offcut(page: &mut Page, area: &Bounds2) {
    outline(page, area, Pen::Medium);
    hatch(page, area, 1.6);
}

fn number(page: &mut Page, area: &Bounds2) {
    let stand = (
        area.centre() - nalgebra::Vector2::new(0.0, 1.25),
        Align::Centre,
        0.0,
    );
    page.text(Layer::Note, "(1)", LETTERS, stand);
}
