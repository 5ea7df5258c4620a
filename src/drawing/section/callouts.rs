//! Callouts: what a section cuts and a detail shows larger, ringed, with the detail's number over its sheet's.

use super::CutView;
use super::subject::Subject;
use crate::drawing::detail::{self, Called, cut_at};
use crate::drawing::fit::Fit;
use crate::drawing::occupancy::{Occupancy, grown, pieces};
use crate::drawing::page::{LETTERS, Page};
use crate::drawing::set::Contents;
use crate::drawing::{Align, Dash, Layer, Pen};
use crate::geometry::{Bounds2, Point2, Vector2, Vertex};

/// Radius of the circle with numbers of up to two figures, and with longer ones, millimetres.
const RADIUS: [f64; 2] = [5.2, 6.6];
/// From a baseline to the line between the numbers.
const OFF_LINE: f64 = 1.0;
/// The ring is never smaller or larger than this, millimetres.
const RING: (f64, f64) = (3.0, 9.0);
/// How far off the ring the circle may stand.
const FARTHEST: u32 = 26;
/// Directions in which it is looked for.
const WAYS: u32 = 24;
/// A line that the way to the circle passes, as millimetres of way.
const PASSED: f64 = 3.0;

/// Calls the details that show what is cut; what finds no clear place is left out: the detail names what it shows itself.
pub(super) fn draw(
    page: &mut Page,
    fit: &Fit,
    subject: &Subject,
    (cut, contents): (&CutView, &Contents),
) {
    for called in cut_at(subject.plan, subject.cut.run, subject.cut.u) {
        let sheet = contents.of_figure(detail::CHAPTER, &called.number.to_string());
        if let Some(sheet) = sheet.filter(|_| !cut.pieces.is_empty()) {
            call(page, fit, &called, sheet);
        }
    }
}

fn call(page: &mut Page, fit: &Fit, called: &Called, sheet: usize) {
    let (v, z) = called.at;
    let target = fit.point(Point2::new(-v, z));
    let wide = (called.reach * fit.scale.factor).clamp(RING.0, RING.1);
    let (number, sheet) = (called.number.to_string(), sheet.to_string());
    let radius = RADIUS[usize::from(number.len().max(sheet.len()) > 2)];
    for ring in [wide, (0.75 * wide).max(RING.0), RING.0] {
        if !is_clear(page.taken(), target, ring) {
            continue;
        }
        if let Some(centre) = place(page, target, (ring, radius)) {
            circle(page, target, ring, (Pen::Fine, Dash::Dashed));
            let way = (centre - target).normalize();
            let ends = [target + way * ring, centre - way * radius];
            page.line(Layer::Symbol, Pen::Fine, Dash::Solid, ends[0], ends[1]);
            bubble(page, (centre, radius), &number, &sheet);
            return;
        }
    }
}

/// The nearest place for the circle that is free; a way that passes few lines is liked better.
fn place(page: &Page, target: Point2, (ring, radius): (f64, f64)) -> Option<Point2> {
    let taken = page.taken();
    let mut best: Option<(f64, Point2)> = None;
    for step in 2..FARTHEST {
        let off = ring + radius + f64::from(step);
        for way in 0..WAYS {
            let angle = std::f64::consts::TAU * f64::from(way) / f64::from(WAYS);
            let out = Vector2::new(angle.cos(), angle.sin());
            let centre = target + out * off;
            let half = Vector2::new(radius, radius);
            let room = grown(
                &Bounds2 {
                    low: centre - half,
                    high: centre + half,
                },
                0.6,
            );
            let ends = [target + out * ring, centre - out * radius];
            if !(page.holds(&room) && taken.is_free(&room) && taken.is_clear(ends)) {
                continue;
            }
            let cost = f64::from(step) + PASSED * passed(taken, ends);
            if best.is_none_or(|(least, _)| cost < least - 1e-9) {
                best = Some((cost, centre));
            }
        }
    }
    best.map(|(_, centre)| centre)
}

/// How much of a straight way lies on lines, in steps of a millimetre.
fn passed(taken: &Occupancy, [from, to]: [Point2; 2]) -> f64 {
    let steps = (to - from).norm().ceil().max(1.0) as u32;
    let on_line = (1..steps).filter(|k| {
        let at = from + (to - from) * (f64::from(*k) / f64::from(steps));
        !taken.is_free(&grown(&Bounds2 { low: at, high: at }, 0.45))
    });
    on_line.count() as f64
}

fn ring_of(centre: Point2, radius: f64) -> Vec<Vertex> {
    let side = Vector2::new(radius, 0.0);
    [centre + side, centre - side]
        .map(|p| Vertex::bent(p.x, p.y, 1.0))
        .to_vec()
}

fn is_clear(taken: &Occupancy, centre: Point2, radius: f64) -> bool {
    let ring = pieces(&ring_of(centre, radius), true);
    ring.into_iter().all(|piece| taken.is_clear(piece))
}

fn circle(page: &mut Page, centre: Point2, radius: f64, (pen, dash): (Pen, Dash)) {
    let points = ring_of(centre, radius);
    page.path(Layer::Symbol, Some(pen), dash, points, true, None);
}

/// The detail's number over the number of its sheet.
fn bubble(page: &mut Page, (centre, radius): (Point2, f64), number: &str, sheet: &str) {
    circle(page, centre, radius, (Pen::Medium, Dash::Solid));
    let half = Vector2::new(radius, 0.0);
    let [from, to] = [centre - half, centre + half];
    page.line(Layer::Symbol, Pen::Fine, Dash::Solid, from, to);
    let over = centre + Vector2::new(0.0, OFF_LINE);
    let under = centre - Vector2::new(0.0, OFF_LINE + LETTERS);
    for (text, at) in [(number, over), (sheet, under)] {
        page.text(Layer::Symbol, text, LETTERS, (at, Align::Centre, 0.0));
    }
}
