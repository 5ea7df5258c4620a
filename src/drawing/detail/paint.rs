//! Cut surfaces hatched, and what is drawn that is no part.

use super::content::{Extra, Stuff};
use super::drawing::{disc, path};
use crate::drawing::fit::Fit;
use crate::drawing::page::Page;
use crate::drawing::{Dash, Layer, Pen};
use crate::geometry::{Outline, Point2, Vector2};

/// From one shim to the next, millimetres on the paper.
const SHIM: f64 = 1.5;
/// How dark sealant is.
const SEALANT: f64 = 0.35;

/// Fills what has no hatch, and draws its edge.
fn fill(page: &mut Page, fit: &Fit, stuff: Stuff, outline: &Outline) {
    let points = fit.outline(outline);
    match stuff {
        Stuff::Of(_) => return,
        Stuff::Sealant => {
            let points = points.clone();
            page.path(Layer::Hatch, None, Dash::Solid, points, true, Some(SEALANT));
        }
        Stuff::Shims => {
            let area = fit.area(&outline.bounds());
            let count = (area.height() / SHIM).round().clamp(1.0, 40.0) as u32;
            for k in 1..count {
                let y = area.low.y + area.height() * f64::from(k) / f64::from(count);
                let (from, to) = (Point2::new(area.low.x, y), Point2::new(area.high.x, y));
                page.line(Layer::Hatch, Pen::Fine, Dash::Solid, from, to);
            }
        }
    }
    page.path(
        Layer::Section,
        Some(Pen::Medium),
        Dash::Solid,
        points,
        true,
        None,
    );
}

/// Draws wires, bars, screws and edges.
pub(super) fn extra(page: &mut Page, fit: &Fit, extra: &Extra) {
    match extra {
        Extra::Cut(stuff, outline) => fill(page, fit, *stuff, outline),
        Extra::Hollow(..) => {}
        Extra::Wire(from, to, thick) => {
            let half = Vector2::new(0.0, (thick / 2.0 * fit.scale.factor).max(0.2));
            let (from, to) = (fit.point(*from), fit.point(*to));
            let points = [from - half, to - half, to + half, from + half];
            page.path(
                Layer::Section,
                None,
                Dash::Solid,
                path(&points),
                true,
                Some(0.0),
            );
        }
        Extra::Dot(at, thick) => disc(
            page,
            fit.point(*at),
            (thick / 2.0 * fit.scale.factor).max(0.5),
        ),
        Extra::Screw(head, tip) => {
            let (head, tip) = (fit.point(*head), fit.point(*tip));
            let along = (tip - head).normalize();
            let across = Vector2::new(-along.y, along.x) * 1.4;
            let cap = [
                head - across,
                head + across,
                head + across - along * 0.9,
                head - across - along * 0.9,
            ];
            page.path(
                Layer::Section,
                None,
                Dash::Solid,
                path(&cap),
                true,
                Some(0.0),
            );
            page.line(Layer::Section, Pen::Medium, Dash::Solid, head, tip);
        }
        Extra::Edge(from, to) => {
            page.line(
                Layer::Outline,
                Pen::Medium,
                Dash::Solid,
                fit.point(*from),
                fit.point(*to),
            );
        }
    }
}
