//! Which sheet shows a face: an arrowhead that looks at the face, with the sheet's number behind it.

use super::style::{ARROWHEAD, sharp};
use crate::drawing::fit::Fit;
use crate::drawing::occupancy::{grown, text_box};
use crate::drawing::page::{LETTERS, Page, Stand};
use crate::drawing::set::Set;
use crate::drawing::{Align, Layer};
use crate::geometry::{Bounds2, Point2, Vector2};
use crate::plan::{Face, Plan};

/// Length of the arrowhead, millimetres on the sheet.
const LONG: f64 = 3.2;
/// Half of its width.
const HALF: f64 = 1.5;
/// Between arrowhead and text.
const GAP: f64 = 0.8;
/// How far from the drawn edge it may stand.
const FARTHEST: u32 = 14;

/// How a text stands behind the base of an arrowhead that points against a direction.
type Behind = fn(Point2, Vector2, &str) -> Stand;

/// For each face the sheets of a chapter that show it, in words.
pub(super) fn views(set: &Set, chapter: &str) -> Vec<(usize, String)> {
    let entries = set.contents.entries.iter().filter(|e| e.chapter == chapter);
    let words = |face: usize| {
        let own = entries.clone().filter(|e| e.planned.face == Some(face));
        let numbers: Vec<_> = own.map(|e| e.number.to_string()).collect();
        match numbers.len() {
            0 => None,
            1 => Some(format!("sheet {}", numbers[0])),
            _ => Some(format!("sheets {}", numbers.join(", "))),
        }
    };
    (0..set.plan.faces.len())
        .filter_map(|face| Some((face, words(face)?)))
        .collect()
}

/// Marks the faces; `edge` is how far outside a face of the frame the plan's own edge is drawn. Says how many found no
/// room.
pub(super) fn draw(
    page: &mut Page,
    plan: &Plan,
    fit: &Fit,
    views: &[(usize, String)],
    edge: impl Fn(&Face) -> f64,
) -> usize {
    let missing = views.iter().filter(|(number, text)| {
        let face = plan.faces.get(*number).filter(|_| !text.is_empty());
        face.is_some_and(|face| !mark(page, fit, face, text, edge(face)))
    });
    missing.count()
}

/// Marks one face where there is room, nearest to its middle and to its edge first; beside a narrow lane the text stands
/// upright.
fn mark(page: &mut Page, fit: &Fit, face: &Face, text: &str, edge: f64) -> bool {
    let fractions = (0..=8).flat_map(|k| [0.5 + 0.055 * f64::from(k), 0.5 - 0.055 * f64::from(k)]);
    let tips = fractions.flat_map(|f| {
        let foot = fit.point(face.point(face.length * f, edge));
        (1..FARTHEST).map(move |d| (f64::from(d), foot + face.outward * f64::from(d)))
    });
    let mut tips: Vec<_> = tips.collect();
    tips.sort_by(|a, b| a.0.total_cmp(&b.0));
    let ways: [Behind; 2] = [behind, behind_upright];
    let tries = ways
        .into_iter()
        .flat_map(|way| tips.iter().map(move |(_, tip)| (way, *tip)));
    for (way, tip) in tries {
        let base = tip + face.outward * LONG;
        let head = [tip, base + face.along * HALF, base - face.along * HALF];
        let stand = way(base, face.outward, text);
        let room = Bounds2::around(head).is_some_and(|b| {
            let b = grown(&b, 0.4);
            page.holds(&b) && page.taken().is_free(&b)
        });
        if room && page.has_air(text, LETTERS, stand, 0.4) {
            ARROWHEAD.filled(page, sharp(&head), 0.0);
            page.text(Layer::Note, text, LETTERS, stand);
            return true;
        }
    }
    false
}

/// How a text stands behind an arrowhead: level, beside or above it.
pub(super) fn behind(base: Point2, out: Vector2, text: &str) -> Stand {
    if out.x.abs() > 0.5 {
        let align = if out.x > 0.0 {
            Align::Left
        } else {
            Align::Right
        };
        let drop = Vector2::new(0.0, 0.375 * LETTERS);
        return (base + out * GAP - drop, align, 0.0);
    }
    let stand = (base, Align::Centre, 0.0);
    let room = text_box(base, text, LETTERS, Align::Centre, 0.0);
    let shift = if out.y > 0.0 {
        base.y - room.low.y + GAP
    } else {
        base.y - room.high.y - GAP
    };
    (stand.0 + Vector2::new(0.0, shift), stand.1, stand.2)
}

/// How a text stands upright behind an arrowhead that points to a side; level above or below one that points up or down.
fn behind_upright(base: Point2, out: Vector2, text: &str) -> Stand {
    if out.x.abs() <= 0.5 {
        return behind(base, out, text);
    }
    let room = text_box(base, text, LETTERS, Align::Centre, 90.0);
    let shift = if out.x > 0.0 {
        base.x - room.low.x + GAP
    } else {
        base.x - room.high.x - GAP
    };
    (base + Vector2::new(shift, 0.0), Align::Centre, 90.0)
}

/// An arrowhead as a key shows it.
pub fn symbol(page: &mut Page, area: &Bounds2) {
    let tip = area.centre() - Vector2::new(LONG / 2.0, 0.0);
    let base = tip + Vector2::new(LONG, 0.0);
    let half = Vector2::new(0.0, HALF);
    ARROWHEAD.filled(page, sharp(&[tip, base + half, base - half]), 0.0);
}
