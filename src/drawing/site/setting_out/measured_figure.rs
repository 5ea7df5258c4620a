//! The frame as measured beside the plan, its differences drawn larger than they are.

use super::figure::{arrow, beside_line, beside_point};
use super::{MeasuredFrame, MeasuredRun};
use crate::drawing::fit::Fit;
use crate::drawing::page::{LARGE, LETTERS, Page};
use crate::drawing::{Dash, Layer, Pen};
use crate::geometry::{Bounds2, Point2, Vertex};

/// How far the largest difference is drawn, about, millimetres on the sheet.
const SHOWN: f64 = 9.0;
/// By how many times differences are drawn larger.
const TIMES: [f64; 10] = [1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0];
/// How long the arrow is that pushes, millimetres on the sheet.
const PUSH: f64 = 11.0;

/// Everything that is drawn, as planned.
pub(super) fn area(frame: &MeasuredFrame) -> Option<Bounds2> {
    Bounds2::around(frame.runs.iter().flat_map(|r| r.planned))
}

/// By how many times the differences are drawn larger at a scale.
pub(super) fn times(frame: &MeasuredFrame, factor: f64) -> f64 {
    let pairs = frame
        .runs
        .iter()
        .flat_map(|r| r.planned.iter().zip(&r.built));
    let most = pairs.map(|(p, b)| (b - p).norm()).fold(0.0, f64::max) * factor;
    let fits = |t: &&f64| **t * most <= SHOWN;
    TIMES.iter().rev().find(fits).copied().unwrap_or(1.0)
}

/// Draws it.
pub(super) fn draw(page: &mut Page, frame: &MeasuredFrame, fit: &Fit) {
    let times = times(frame, fit.scale.factor);
    for run in &frame.runs {
        ring(
            page,
            &run.planned.map(|p| fit.point(p)),
            Pen::Fine,
            Dash::Phantom,
        );
        ring(page, &shown(run, fit, times), Pen::Thick, Dash::Solid);
    }
    for run in &frame.runs {
        let built = shown(run, fit, times);
        for (planned, built) in run.planned.iter().zip(built) {
            let planned = fit.point(*planned);
            if (built - planned).norm() > 0.8 {
                arrow(page, Pen::Thin, planned, built);
            }
        }
        push(page, run, &built);
    }
    let mut lettered: Vec<&str> = Vec::new();
    for run in &frame.runs {
        for (letter, at) in run.letters.iter().zip(shown(run, fit, times)) {
            if !lettered.contains(&letter.as_str()) {
                lettered.push(letter);
                beside_point(page, letter, LARGE, at);
            }
        }
    }
    for run in &frame.runs {
        let built = shown(run, fit, times);
        for (i, text) in run.sides.iter().enumerate() {
            // What finds no room here stands in the table.
            beside_line(page, text, [built[i], built[(i + 1) % 4]]);
        }
    }
}

/// The measured corners with their differences from the plan drawn larger.
fn shown(run: &MeasuredRun, fit: &Fit, times: f64) -> [Point2; 4] {
    std::array::from_fn(|i| fit.point(run.planned[i] + (run.built[i] - run.planned[i]) * times))
}

fn ring(page: &mut Page, points: &[Point2; 4], pen: Pen, dash: Dash) {
    let points = points.iter().map(|p| Vertex::sharp(p.x, p.y)).collect();
    page.path(Layer::Outline, Some(pen), dash, points, true, None);
}

/// The arrow that pushes a corner: it ends there.
fn push(page: &mut Page, run: &MeasuredRun, built: &[Point2; 4]) {
    let Some(push) = &run.push else { return };
    let Some(tip) = built.get(push.corner) else {
        return;
    };
    let from = tip - push.towards * PUSH;
    arrow(page, Pen::Heavy, from, *tip - push.towards * 1.0);
    if !beside_point(page, &push.words, LETTERS, from) {
        page.lose(&push.words);
    }
}
