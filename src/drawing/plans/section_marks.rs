//! Where the sections are cut: the two ends of each plane, with arrows the way one looks and the letter.

use super::face_marks::behind;
use super::style::{ARROWHEAD, PLANE, SYMBOL, sharp};
use crate::drawing::Layer;
use crate::drawing::fit::Fit;
use crate::drawing::occupancy::grown;
use crate::drawing::page::{LETTERS, Page};
use crate::drawing::section::{self, cuts};
use crate::drawing::set::Set;
use crate::geometry::{Bounds2, Point2, Vector2};
use crate::plan::Plan;

/// Length of the plane's end, millimetres on the sheet.
const END: f64 = 4.5;
/// Length of the arrow.
const ARROW: f64 = 5.0;
/// How far outside the counter it may begin.
const FARTHEST: u32 = 26;
/// How far where nearer there is no room, past what opens and what is named there.
const FAR: u32 = 60;

/// Marks both ends of every plane; says how many ends found no room.
pub(super) fn draw(page: &mut Page, set: &Set, fit: &Fit) -> usize {
    let plan = set.plan;
    let mut missing = 0;
    for cut in cuts(plan) {
        let Some(run) = plan.runs.get(cut.run) else {
            continue;
        };
        let sheet = set.contents.of_figure(section::CHAPTER, &cut.letter);
        let text = sheet.map_or(cut.letter.clone(), |s| format!("{}/{s}", cut.letter));
        let (near, far) = plan.counter_across(cut.run);
        for (v, out) in [(near, -run.away), (far, run.away)] {
            let foot = fit.point(run.point(cut.u, v));
            missing += usize::from(!end(page, foot, out, run.along, &text));
        }
    }
    missing
}

/// One end: the plane's stroke outwards from the counter, an arrow along the way one looks, the letter past its tip; in a
/// corner the letter stands behind the stroke.
fn end(page: &mut Page, foot: Point2, out: Vector2, look: Vector2, text: &str) -> bool {
    let near = (2..FARTHEST).map(|d| (d, false));
    let cornered = (2..FAR).flat_map(|d| [(d, false), (d, true)]);
    for (d, turned) in near.chain(cornered) {
        let near = foot + out * f64::from(d);
        let far = near + out * END;
        let tip = far + look * ARROW;
        let stand = if turned {
            behind(far, -look, text)
        } else {
            behind(tip, look, text)
        };
        let room = Bounds2::around([near, far, tip - out * 1.2, tip + out * 1.2]);
        let free = room.is_some_and(|b| {
            let b = grown(&b, 0.5);
            page.holds(&b) && page.taken().is_free(&b)
        });
        if free && page.has_air(text, LETTERS, stand, 0.3) {
            PLANE.line(page, near, far);
            arrow(page, far, tip);
            page.text(Layer::Symbol, text, LETTERS, stand);
            return true;
        }
    }
    false
}

fn arrow(page: &mut Page, from: Point2, tip: Point2) {
    let look = (tip - from).normalize();
    let side = Vector2::new(-look.y, look.x) * 0.9;
    let base = tip - look * 2.6;
    SYMBOL.line(page, from, base);
    ARROWHEAD.filled(page, sharp(&[tip, base + side, base - side]), 0.0);
}

/// What the key says of them; `None` without sections.
pub(super) fn words(plan: &Plan) -> Option<String> {
    let any = !cuts(plan).is_empty();
    any.then(|| "section, its letter and its sheet; the arrow is the way one looks".to_owned())
}

/// A plane's end as the key shows it.
pub fn symbol(page: &mut Page, area: &Bounds2) {
    let middle = area.centre() - Vector2::new(2.5, 0.0);
    let half = Vector2::new(0.0, END / 2.0);
    PLANE.line(page, middle - half, middle + half);
    arrow(
        page,
        middle + half,
        middle + half + Vector2::new(ARROW, 0.0),
    );
}
