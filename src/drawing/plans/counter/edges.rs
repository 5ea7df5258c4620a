//! Numbers beside the counter's sides, as the edge schedule has them.

use crate::drawing::fit::Fit;
use crate::drawing::occupancy::text_box;
use crate::drawing::page::{LETTERS, Page};
use crate::drawing::schedule::edge_mark;
use crate::drawing::{Align, Layer};
use crate::geometry::{Bounds2, Point2, Vector2};
use crate::plan::{CounterSide, Plan};

/// Between a side and its number, millimetres on the sheet.
const BESIDE: f64 = 0.9;
/// How far from its side a number may stand.
const FARTHEST: u32 = 8;

/// Letters every side's number outside it, level, nearest to its middle first; says how many found no room.
pub(super) fn letter(page: &mut Page, plan: &Plan, fit: &Fit) -> usize {
    let sides = plan.counter.sides.iter().enumerate();
    let missing = sides.filter(|(number, side)| {
        let text = edge_mark(*number);
        !placed(page, fit, side, &text)
    });
    missing.count()
}

fn placed(page: &mut Page, fit: &Fit, side: &CounterSide, text: &str) -> bool {
    let (from, to) = (fit.point(side.start), fit.point(side.end));
    let long = (to - from).norm();
    if long < 1e-6 {
        return false;
    }
    let along = (to - from) / long;
    // The sides run counter-clockwise: outwards is to the right.
    let out = Vector2::new(along.y, -along.x);
    let room = text_box(Point2::origin(), text, LETTERS, Align::Centre, 0.0);
    let stands = (0..FARTHEST).flat_map(|d| {
        let fractions =
            (0..=9).flat_map(|k| [0.5 + 0.05 * f64::from(k), 0.5 - 0.05 * f64::from(k)]);
        fractions.map(move |f| {
            let edge = from + (to - from) * f;
            let at = edge + out * (BESIDE + f64::from(d)) + towards(&room, out);
            (at, Align::Centre, 0.0)
        })
    });
    page.place(Layer::Symbol, text, LETTERS, stands)
}

/// From a point to where a text stands that touches it from a side.
fn towards(room: &Bounds2, out: Vector2) -> Vector2 {
    let pick = |out: f64, low: f64, high: f64| {
        if out > 0.5 {
            -low
        } else if out < -0.5 {
            -high
        } else {
            -f64::midpoint(low, high)
        }
    };
    Vector2::new(
        pick(out.x, room.low.x, room.high.x),
        pick(out.y, room.low.y, room.high.y),
    )
}
