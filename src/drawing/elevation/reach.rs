//! From where to where a finished elevation shows something.

use super::finished::MARGINS;
use super::parts::widest;
use super::window::Reach;
use crate::drawing::border::Frame;
use crate::geometry::Point2;
use crate::plan::{Face, Plan};

/// How far past its face and the counter over it an elevation goes on where not all fits on one sheet, millimetres built:
/// as far as the leg at an inward corner is deep on most islands, with its overhang.
const RETURN: f64 = 1500.0;

/// The shortest such return that is wanted where the sheet leaves no more.
const LEAST: f64 = 600.0;

/// The reach of the finished elevation of a face, in its s: from end to end of the counter, whose other legs are seen
/// beyond the face, where all that fits on one sheet. Else the face with the counter over it and a short return past both,
/// broken off: what stands there is on the sheets of its own faces.
pub(super) fn of_finished(plan: &Plan, frame: &Frame, number: usize) -> Option<Reach> {
    let face = plan.faces.get(number)?;
    let (low, high) = all(plan, face);
    if high - low <= widest(frame, MARGINS) {
        return Some(Reach::all(low, high));
    }
    let over = counter_ends(plan, face, number).unwrap_or([0.0, face.length]);
    let own = (over[0].min(0.0), over[1].max(face.length));
    let left = (widest(frame, MARGINS) - (own.1 - own.0)) / 2.0;
    let past = if left < LEAST {
        RETURN
    } else {
        left.min(RETURN)
    };
    let (from, to) = (own.0 - past, own.1 + past);
    Some(Reach {
        low: low.max(from),
        high: high.min(to),
        goes_on: [low < from, high > to],
    })
}

/// From end to end of the counter.
fn all(plan: &Plan, face: &Face) -> (f64, f64) {
    let corners = plan.counter.outline.vertices().iter();
    let s = corners.map(|v| (v.at - face.start).dot(&face.along));
    s.fold((0.0, face.length), |(low, high), s| {
        (low.min(s), high.max(s))
    })
}

/// From where to where the counter's edge over this face runs.
pub(super) fn counter_ends(plan: &Plan, face: &Face, number: usize) -> Option<[f64; 2]> {
    let s = |p: Point2| (p - face.start).dot(&face.along);
    let sides = plan.counter.sides.iter().filter(|side| side.face == number);
    let (low, high) = sides
        .flat_map(|side| [s(side.start), s(side.end)])
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), s| {
            (low.min(s), high.max(s))
        });
    (low < high).then_some([low, high])
}
