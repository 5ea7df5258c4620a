//! Signs of the plans of the ground.

use crate::drawing::occupancy::grown;
use crate::drawing::page::{LETTERS, Page, Stand};
use crate::drawing::plans::style::{ARROWHEAD, FINE, SYMBOL, sharp};
use crate::drawing::{Align, Layer, lettering};
use crate::geometry::{Bounds2, Point2, Vector2};

/// Radius of the datum's circle, millimetres on the sheet.
const DATUM: f64 = 1.8;
/// Half of the cross of a level.
const CROSS: f64 = 1.0;
/// Half of the triangle of a peak or a hollow.
const PEAK: f64 = 1.7;
/// Length of the arrow of the fall.
const ARROW: f64 = 16.0;

/// The datum: a circle with two of its quarters filled.
pub(super) fn datum(page: &mut Page, at: Point2) {
    SYMBOL.circle(page, at, DATUM);
    for (x, y) in [(1.0, 1.0), (-1.0, -1.0)] {
        let corner = at + Vector2::new(x, y) * (DATUM * 0.7);
        let points = [
            at,
            Point2::new(at.x + x * DATUM, at.y),
            corner,
            Point2::new(at.x, at.y + y * DATUM),
        ];
        ARROWHEAD.filled(page, sharp(&points), 0.0);
    }
}

/// A level: a cross.
pub(super) fn level(page: &mut Page, at: Point2) {
    let (x, y) = (Vector2::new(CROSS, 0.0), Vector2::new(0.0, CROSS));
    SYMBOL.line(page, at - x, at + x);
    SYMBOL.line(page, at - y, at + y);
}

/// A peak, or a hollow: a triangle that points up, or down.
pub(super) fn peak(page: &mut Page, at: Point2, up: bool) {
    let sign = if up { 1.0 } else { -1.0 };
    let point = |x: f64, y: f64| at + Vector2::new(x, y * sign) * PEAK;
    let points = [point(-1.0, -0.7), point(1.0, -0.7), point(0.0, 1.0)];
    SYMBOL.closed(page, sharp(&points));
}

/// What a level and the sign on it take.
pub(super) fn room(at: Point2, is_plain: bool) -> Bounds2 {
    let half = if is_plain { CROSS } else { PEAK };
    grown(&Bounds2 { low: at, high: at }, half)
}

/// An arrow.
pub(super) fn arrow(page: &mut Page, from: Point2, way: Vector2, long: f64) {
    let (tip, side) = (from + way * long, Vector2::new(-way.y, way.x));
    let base = tip - way * 3.0;
    SYMBOL.line(page, from, base);
    ARROWHEAD.filled(page, sharp(&[tip, base + side, base - side]), 0.0);
}

/// The arrow of the fall with its words, at the first of some middles where both find room.
pub(super) fn fall(
    page: &mut Page,
    middles: impl Iterator<Item = Point2>,
    down: Vector2,
    text: &str,
) -> bool {
    let half = down * (ARROW / 2.0);
    let reach = Vector2::new(half.x.abs() + 1.5, half.y.abs() + 1.5);
    for middle in middles {
        let room = Bounds2 {
            low: middle - reach,
            high: middle + reach,
        };
        let out = reach.y + LETTERS;
        let stands: [Stand; 2] = [
            (middle - Vector2::new(0.0, out + 0.5), Align::Centre, 0.0),
            (
                middle + Vector2::new(0.0, reach.y + 1.0),
                Align::Centre,
                0.0,
            ),
        ];
        let free = page.holds(&room) && page.taken().is_free(&room);
        let stand = stands
            .into_iter()
            .find(|s| page.has_air(text, LETTERS, *s, 0.8));
        if let Some(stand) = stand.filter(|_| free) {
            arrow(page, middle - half, down, ARROW);
            page.text(Layer::Note, text, LETTERS, stand);
            return true;
        }
    }
    false
}

/// Letters a short text close round a sign, the upper right first.
pub(super) fn beside(page: &mut Page, text: &str, room: &Bounds2) -> bool {
    let (low, high) = (room.low, room.high);
    let (half, gap) = (lettering::width(text, LETTERS) / 2.0, 0.6);
    let middle = room.centre();
    let drop = middle.y - 0.375 * LETTERS;
    let (up, down) = (high.y + gap + 0.33 * LETTERS, low.y - gap - 1.08 * LETTERS);
    let (right, left) = (high.x + gap, low.x - gap);
    let near = [
        (right, drop, Align::Left),
        (left, drop, Align::Right),
        (middle.x, up, Align::Centre),
        (middle.x, down, Align::Centre),
        (right - 0.5, up, Align::Left),
        (right - 0.5, down, Align::Left),
        (left + 0.5, up, Align::Right),
        (left + 0.5, down, Align::Right),
        (middle.x + half * 0.6, up, Align::Centre),
        (middle.x - half * 0.6, up, Align::Centre),
        (middle.x + half * 0.6, down, Align::Centre),
        (middle.x - half * 0.6, down, Align::Centre),
    ];
    let stands = near.map(|(x, y, align)| (Point2::new(x, y), align, 0.0));
    page.place(Layer::Note, text, LETTERS, stands)
}

/// The sign of a level in a key.
pub(super) fn level_in_key(page: &mut Page, area: &Bounds2) {
    level(page, area.centre());
}

/// The sign of the datum in a key.
pub(super) fn datum_in_key(page: &mut Page, area: &Bounds2) {
    datum(page, area.centre());
}

/// Those of a peak and a hollow.
pub(super) fn peaks_in_key(page: &mut Page, area: &Bounds2) {
    let apart = Vector2::new(2.6, 0.0);
    peak(page, area.centre() - apart, true);
    peak(page, area.centre() + apart, false);
}

/// That of the fall, and of something that leans.
pub(super) fn arrow_in_key(page: &mut Page, area: &Bounds2) {
    let from = Point2::new(area.low.x + 1.0, area.centre().y);
    arrow(page, from, Vector2::x(), 10.0);
}

/// A pack in a key.
pub(super) fn pack_in_key(page: &mut Page, area: &Bounds2) {
    FINE.boxed(page, &square(area.centre(), 4.4));
}

/// One on ground that is not well known.
pub(super) fn unsure_in_key(page: &mut Page, area: &Bounds2) {
    let square = square(area.centre(), 4.4);
    FINE.filled(page, super::super::style::corners(&square), 0.8);
}

/// A square about a middle.
pub(super) fn square(middle: Point2, side: f64) -> Bounds2 {
    grown(
        &Bounds2 {
            low: middle,
            high: middle,
        },
        side / 2.0,
    )
}
