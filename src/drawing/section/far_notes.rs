//! Notes on what lies behind an open cutout, as seen from the column of notes: their leaders would run across the
//! appliance, so they stand inside the island, under what they speak of.

use super::subject::Subject;
use crate::drawing::figure::{Beside, LeaderNote, NotesColumn, notes_height, place_notes};
use crate::drawing::fit::Fit;
use crate::drawing::page::Page;
use crate::geometry::{Bounds2, Point2, Vector2};
use crate::plan::Body;

/// From what is above and below to the notes, millimetres on the paper.
const OFF: f64 = 2.5;
/// From the studs to the notes: room in which their leaders fan out, the one that is liked best first.
const FANS: [f64; 3] = [6.5, 4.5, 3.0];
/// Room left beside them for the clear height.
const CLEAR_HEIGHT: f64 = 8.0;
/// No narrower and no wider than this, millimetres.
const WIDTH: (f64, f64) = (24.0, 52.0);
/// A leader longer than this share of the view runs across all of it.
const ACROSS: f64 = 0.75;

/// Letters what lies behind an open cutout inside the island, and gives the notes for the column beside the view; where
/// there is no room inside, what would be led across the whole view is left out.
pub(super) fn place(
    page: &mut Page,
    fit: &Fit,
    subject: &Subject,
    notes: Vec<LeaderNote>,
) -> Vec<LeaderNote> {
    let Some((hole, _)) = subject.cutout().filter(|(hole, _)| hole.open) else {
        return notes;
    };
    let front = fit.x(-hole.v1);
    let is_behind = |n: &LeaderNote| !n.feet.is_empty() && n.feet.iter().all(|p| p.x < front);
    let (behind, beside): (Vec<_>, Vec<_>) = notes.into_iter().partition(is_behind);
    let mut columns = FANS.iter().filter_map(|fan| column(fit, subject, *fan));
    if let Some(lettered) = columns.find_map(|column| letter(page, &column, &behind)) {
        *page = lettered;
        return beside;
    }
    let view = fit.area(&subject.window());
    let short = |n: &LeaderNote| {
        let mut feet = n.feet.iter();
        feet.any(|p| view.high.x - p.x < ACROSS * view.width())
    };
    behind.into_iter().filter(short).chain(beside).collect()
}

/// The sheet with notes in a column, where there is room for them and each leader has a way.
fn letter(page: &Page, column: &NotesColumn, notes: &[LeaderNote]) -> Option<Page> {
    let notes = led_left(notes, column.edge);
    let texts = notes.iter().map(|n| n.text.as_str());
    let (low, high) = column.height;
    let room = Bounds2 {
        low: Point2::new(column.edge, low),
        high: Point2::new(column.edge + column.width, high),
    };
    let fits = notes_height(texts, column.width) <= high - low && page.taken().is_free(&room);
    let mut lettered = page.clone();
    if !fits || place_notes(&mut lettered, column, &notes) > 0 {
        return None;
    }
    // The clear height keeps off the texts.
    lettered.reserve(Bounds2 {
        low: Point2::new(room.low.x, room.high.y - (high - low)),
        high: room.high + Vector2::new(1.0, 0.0),
    });
    Some(lettered)
}

/// The notes without the feet from which their leaders would come down steeply, one on the other.
fn led_left(notes: &[LeaderNote], edge: f64) -> Vec<LeaderNote> {
    let led = notes.iter().map(|note| {
        let left = note.feet.iter().filter(|p| p.x < edge - OFF);
        let left: Vec<Point2> = left.copied().collect();
        LeaderNote {
            text: note.text.clone(),
            feet: if left.is_empty() {
                note.feet.clone()
            } else {
                left
            },
        }
    });
    led.collect()
}

/// The free room between the frame's two sides, under what hangs there.
fn column(fit: &Fit, subject: &Subject, fan: f64) -> Option<NotesColumn> {
    let panel = subject.plan.sizes.panel;
    let low = fit.x(-subject.run.depth + panel) + fan;
    let high = fit.x(-panel) - OFF - CLEAR_HEIGHT;
    let levels = &subject.plan.levels;
    let over = |b: &&Body| fit.x(-b.v.0) > low && fit.x(-b.v.1) < high;
    let hung = subject.bodies().into_iter().map(|(_, body)| body);
    let hung = hung.filter(over);
    let lowest = hung.map(|b| b.z.0).fold(levels.frame_top, f64::min);
    let width = (high - low).min(WIDTH.1);
    (width >= WIDTH.0).then(|| NotesColumn {
        beside: Beside::Right,
        edge: low,
        width,
        height: (fit.y(levels.frame_bottom) + OFF, fit.y(lowest) - OFF),
    })
}
