//! Walls that a side of the island stands against.

use super::style::{FINE, STANDING};
use crate::drawing::fit::Fit;
use crate::drawing::page::Page;
use crate::plan::{Face, Plan};

/// Between strokes, millimetres on the sheet.
const STROKE: f64 = 2.5;

/// A heavy line in the wall's plane with strokes behind it.
pub(super) fn draw(page: &mut Page, plan: &Plan, fit: &Fit, wanted: impl Fn(&Face) -> bool) {
    for face in plan.faces.iter().filter(|f| f.wall && wanted(f)) {
        let ends = [face.point(0.0, 0.0), face.point(face.length, 0.0)];
        let [from, to] = ends.map(|p| fit.point(p));
        STANDING.line(page, from, to);
        let count = ((to - from).norm() / STROKE).floor().min(2000.0) as u32;
        for i in 0..count {
            let foot = from + (to - from) * ((f64::from(i) + 0.5) / f64::from(count));
            let head = foot + (face.outward + face.along) * (STROKE * 0.7);
            FINE.line(page, foot, head);
        }
    }
}
