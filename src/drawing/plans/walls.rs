//! Walls that a side of the island stands against.

use super::style::{FINE, STANDING};
use crate::drawing::fit::Fit;
use crate::drawing::page::Page;
use crate::geometry::{Bounds2, Point2, Vector2};
use crate::plan::{Face, Plan};

/// Between strokes, millimetres on the sheet.
const STROKE: f64 = 2.5;

/// A piece of one as a key shows it.
pub(super) fn symbol(page: &mut Page, area: &Bounds2) {
    let middle = area.centre() - Vector2::new(0.0, STROKE / 2.0);
    let ends = [-4.0, 4.0].map(|x| middle + Vector2::new(x, 0.0));
    STANDING.line(page, ends[0], ends[1]);
    strokes(page, ends, Vector2::new(STROKE, STROKE) * 0.7);
}

/// A heavy line in the wall's plane with strokes behind it.
pub(super) fn draw(page: &mut Page, plan: &Plan, fit: &Fit, wanted: impl Fn(&Face) -> bool) {
    for face in plan.faces.iter().filter(|f| f.wall && wanted(f)) {
        let ends = [face.point(0.0, 0.0), face.point(face.length, 0.0)];
        let [from, to] = ends.map(|p| fit.point(p));
        STANDING.line(page, from, to);
        let slant = (face.outward + face.along) * (STROKE * 0.7);
        strokes(page, [from, to], slant);
    }
}

/// Slanting strokes from a line, evenly along it.
fn strokes(page: &mut Page, [from, to]: [Point2; 2], slant: Vector2) {
    let count = ((to - from).norm() / STROKE).floor().min(2000.0) as u32;
    for i in 0..count {
        let foot = from + (to - from) * ((f64::from(i) + 0.5) / f64::from(count));
        FINE.line(page, foot, foot + slant);
    }
}
