//! Break lines: where a view goes on past its window.

use super::drawing::path;
use crate::drawing::fit::Fit;
use crate::drawing::page::Page;
use crate::drawing::section::CutView;
use crate::drawing::{Dash, Layer, Pen};
use crate::geometry::{Bounds2, Outline, Point2, Vector2};

/// How far the line passes what is broken off, millimetres on the paper.
const PAST: f64 = 1.5;
/// Half of the zigzag in its middle, along and across.
const ZIGZAG: (f64, f64) = (1.4, 1.6);
/// Shorter lines have no zigzag.
const PLAIN: f64 = 8.0;

/// Draws a thin line with a zigzag along each side of a window where what is drawn goes on.
pub(in crate::drawing) fn draw(page: &mut Page, fit: &Fit, area: &Bounds2, cut: &CutView) {
    for axis in 0..2 {
        for (level, out) in [(area.low[axis], -1.0), (area.high[axis], 1.0)] {
            if let Some(reach) = broken(cut, axis, level) {
                line(page, fit, (axis, level, out), reach);
            }
        }
    }
}

/// From where to where along a side something touches it.
fn broken(cut: &CutView, axis: usize, level: f64) -> Option<(f64, f64)> {
    let parts = cut.pieces.iter().filter(|p| p.part.is_some());
    let outlines = parts.flat_map(|p| &p.regions).map(|r| &r.outer);
    let corners = outlines.flat_map(Outline::vertices).map(|v| v.at);
    let ends = cut.beyond.iter().flat_map(|line| [line.from, line.to]);
    let on_side = corners
        .chain(ends)
        .filter(|p| (p[axis] - level).abs() < 1e-6);
    on_side.map(|p| p[1 - axis]).fold(None, |reach, v| {
        let (low, high) = reach.unwrap_or((v, v));
        Some((v.min(low), v.max(high)))
    })
}

fn line(
    page: &mut Page,
    fit: &Fit,
    (axis, level, out): (usize, f64, f64),
    (low, high): (f64, f64),
) {
    let point = |v: f64| {
        let mut at = Point2::origin();
        at[axis] = level;
        at[1 - axis] = v;
        fit.point(at)
    };
    let mut along = Vector2::zeros();
    along[1 - axis] = 1.0;
    let mut across = Vector2::zeros();
    across[axis] = out;
    let (from, to) = (point(low) - along * PAST, point(high) + along * PAST);
    line_between(page, from, to, across);
}

/// Draws a thin line with a zigzag in its middle, which turns first to the side of `across`, one long.
pub(in crate::drawing) fn line_between(page: &mut Page, from: Point2, to: Point2, across: Vector2) {
    let Some(along) = (to - from).try_normalize(1e-9) else {
        return;
    };
    let middle = nalgebra::center(&from, &to);
    let mut points = vec![from];
    if (to - from).norm() > PLAIN {
        let (step, high) = ZIGZAG;
        points.extend([
            middle - along * step,
            middle - along * (step / 3.0) + across * high,
            middle + along * (step / 3.0) - across * high,
            middle + along * step,
        ]);
    }
    points.push(to);
    page.path(
        Layer::Detail,
        Some(Pen::Fine),
        Dash::Solid,
        path(&points),
        false,
        None,
    );
}
