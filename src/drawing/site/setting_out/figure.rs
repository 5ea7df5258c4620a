//! What both figures draw with.

use crate::drawing::page::{LETTERS, Page};
use crate::drawing::{Align, Dash, Layer, Pen};
use crate::geometry::{Point2, Vector2, Vertex};

/// Length of an arrowhead and half its width, millimetres on the sheet.
const HEAD: (f64, f64) = (2.6, 0.8);
/// Radius of a peg.
const PEG: f64 = 0.9;
/// So many places along a line are tried for its text.
const TRIED: i32 = 9;

/// A filled arrow.
pub(super) fn arrow(page: &mut Page, pen: Pen, from: Point2, tip: Point2) {
    let Some(along) = (tip - from).try_normalize(1e-6) else {
        return;
    };
    let across = Vector2::new(-along.y, along.x);
    let base = tip - along * HEAD.0.min((tip - from).norm());
    page.line(Layer::Symbol, pen, Dash::Solid, from, base);
    let head = [tip, base + across * HEAD.1, base - across * HEAD.1];
    let points = head.iter().map(|p| Vertex::sharp(p.x, p.y)).collect();
    page.path(
        Layer::Symbol,
        Some(Pen::Fine),
        Dash::Solid,
        points,
        true,
        Some(0.0),
    );
}

/// A peg: a ring.
pub(super) fn peg(page: &mut Page, at: Point2) {
    let points = vec![
        Vertex::bent(at.x + PEG, at.y, 1.0),
        Vertex::bent(at.x - PEG, at.y, 1.0),
    ];
    page.path(
        Layer::Outline,
        Some(Pen::Medium),
        Dash::Solid,
        points,
        true,
        None,
    );
}

/// A text beside a point: at the first of the places round it where there is room; the nearest first.
pub(super) fn beside_point(page: &mut Page, text: &str, height: f64, at: Point2) -> bool {
    within(page, text, height, at, &[1.0, 1.8, 2.8, 4.0])
}

/// The same close by, so that it is read with nothing else.
pub(super) fn close_by(page: &mut Page, text: &str, height: f64, at: Point2) -> bool {
    within(page, text, height, at, &[0.7, 1.0])
}

fn within(page: &mut Page, text: &str, height: f64, at: Point2, steps: &[f64]) -> bool {
    let ways = [
        (1.0, 1.0),
        (-1.0, 1.0),
        (-1.0, -1.0),
        (1.0, -1.0),
        (1.0, 0.0),
        (-1.0, 0.0),
        (0.0, 1.0),
        (0.0, -1.0),
    ];
    let stands = steps.iter().flat_map(|far| {
        ways.map(|(x, y)| {
            let align = if x > 0.5 {
                Align::Left
            } else if x < -0.5 {
                Align::Right
            } else {
                Align::Centre
            };
            let foot = at.y + y * far * 1.6 - height * (1.0 - y) / 2.0;
            (Point2::new(at.x + x * far * 1.6, foot), align, 0.0)
        })
    });
    let stands: Vec<_> = stands.collect();
    page.place(Layer::Note, text, height, stands)
}

/// A text along a line, near its middle, on its left or its right: upright beside a line that stands, level otherwise.
pub(super) fn beside_line(page: &mut Page, text: &str, line: [Point2; 2]) -> bool {
    let [from, to] = line;
    let along = to - from;
    let stands_up = along.y.abs() > along.x.abs();
    let angle = if stands_up { 90.0 } else { 0.0 };
    let place = |share: f64, off: f64| {
        let at = from + along * share;
        if stands_up {
            (Point2::new(at.x + off, at.y), Align::Centre, angle)
        } else {
            (Point2::new(at.x, at.y + off), Align::Centre, angle)
        }
    };
    let offs = [
        1.0,
        -1.0 - LETTERS,
        2.2,
        -2.2 - LETTERS,
        4.0,
        -4.0 - LETTERS,
    ];
    let shares = (0..TRIED).map(|i| {
        let step = f64::from((i + 1) / 2) * 0.09;
        0.5 + if i % 2 == 0 { step } else { -step }
    });
    let stands: Vec<_> = shares
        .flat_map(|share| offs.map(|off| place(share, if stands_up { -off } else { off })))
        .collect();
    page.place(Layer::Note, text, LETTERS, stands)
}
