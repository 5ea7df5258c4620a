//! What the bars mean.

use super::bars::{OTHERS, OWN, diamond, solid, waiting, width};
use crate::drawing::page::{LETTERS, Page};
use crate::drawing::{Align, Layer};
use crate::geometry::Point2;

/// Of a row.
const ROW: f64 = 5.5;
/// The room of a sign, and the air after its words.
const SIGN: f64 = 11.0;
const AIR: f64 = 8.0;

#[derive(Clone, Copy)]
enum Sign {
    Critical,
    Slack,
    Others,
    Wait,
    Hold,
    Star,
}

const SIGNS: [(Sign, &str); 6] = [
    (
        Sign::Critical,
        "decides the end: a delay here moves everything",
    ),
    (Sign::Slack, "can slip; site/steps.csv says how far"),
    (Sign::Others, "licensed trade or inspector"),
    (Sign::Wait, "wait: curing, drying, setting"),
    (Sign::Hold, "hold point: signed before anything goes on"),
    (Sign::Star, "invented default; ×2: pairs of hands"),
];

/// Where each sign stands: its row, and how far right.
fn places(room: f64) -> Vec<(usize, f64)> {
    let (mut row, mut x) = (0, 0.0);
    let mut places = Vec::new();
    for (_, text) in SIGNS {
        let wide = SIGN + width(text);
        if x > 0.0 && x + wide > room {
            (row, x) = (row + 1, 0.0);
        }
        places.push((row, x));
        x += wide + AIR;
    }
    places
}

/// How high it is.
pub(super) fn height(room: f64) -> f64 {
    let rows = places(room).last().map_or(0, |p| p.0 + 1);
    3.0 + ROW * rows as f64
}

/// Draws it below `at`.
pub(super) fn draw(page: &mut Page, at: Point2, room: f64) {
    for ((sign, text), (row, x)) in SIGNS.into_iter().zip(places(room)) {
        let (x, middle) = (at.x + x, at.y - ROW * (row as f64 + 0.5));
        let span = (x + 0.5, x + 8.5);
        match sign {
            Sign::Critical => solid(page, span, middle, OWN, true),
            Sign::Slack => solid(page, span, middle, OWN, false),
            Sign::Others => solid(page, span, middle, OTHERS, false),
            Sign::Wait => waiting(page, span.0, span.1, middle),
            Sign::Hold => diamond(page, x + 4.5, middle),
            Sign::Star => {
                let stand = (
                    Point2::new(x + 4.5, middle - LETTERS / 2.0),
                    Align::Centre,
                    0.0,
                );
                page.text(Layer::Table, "*", LETTERS, stand);
            }
        }
        let stand = (
            Point2::new(x + SIGN, middle - LETTERS / 2.0),
            Align::Left,
            0.0,
        );
        page.text(Layer::Table, text, LETTERS, stand);
    }
}
