//! Where on a plan a name may stand without a leader: inside an area, in rows one below the other, along a line.

use crate::drawing::marks::{Mark, lead_to};
use crate::drawing::occupancy::text_box;
use crate::drawing::page::{LETTERS, Page, Stand};
use crate::drawing::{Align, Layer, lettering};
use crate::geometry::{Bounds2, Point2, Vector2};

/// From one place that is tried to the next, millimetres.
const STEP: f64 = 1.5;
/// Air round rows inside an area.
const AIR: f64 = 0.5;
/// From one row to the next, in heights of a capital.
const ROW: f64 = 1.6;

/// Letters a name inside an area, level, as near to its middle as it finds room; false where it finds none.
pub(super) fn inside(page: &mut Page, text: &str, height: f64, area: &Bounds2) -> bool {
    stacked_at(page, &[text.to_owned()], (height, 1.6), area)
}

/// Letters rows one below the other inside an area, close together; false, and nothing lettered, where they find no room.
pub(super) fn stacked(page: &mut Page, rows: &[String], area: &Bounds2) -> bool {
    stacked_at(page, rows, (LETTERS, AIR), area)
}

fn stacked_at(page: &mut Page, rows: &[String], (height, air): (f64, f64), area: &Bounds2) -> bool {
    let widths = rows.iter().map(|r| lettering::width(r, height));
    let wide = widths.fold(0.0, f64::max);
    let high = height * (1.41 + ROW * (rows.len().max(1) as f64 - 1.0));
    let play = Vector2::new(area.width() - wide, area.height() - high) / 2.0 - Vector2::repeat(air);
    if rows.is_empty() || play.min() < 0.0 {
        return false;
    }
    let counts = play.map(|p| (p / STEP).floor().min(200.0) as i32);
    let mut shifts: Vec<Vector2> = (-counts.x..=counts.x)
        .flat_map(|i| {
            (-counts.y..=counts.y).map(move |j| Vector2::new(f64::from(i), f64::from(j)) * STEP)
        })
        .collect();
    shifts.sort_by(|a, b| a.norm().total_cmp(&b.norm()));
    let stands = |shift: Vector2| {
        let middle = area.centre() + shift;
        let first = middle.y + high / 2.0 - 1.08 * height;
        let stand = move |k: usize| {
            let y = first - ROW * height * k as f64;
            (Point2::new(middle.x, y), Align::Centre, 0.0)
        };
        (0..rows.len()).map(stand).collect::<Vec<Stand>>()
    };
    let free = shifts.into_iter().map(stands).find(|stands| {
        let mut lettered = rows.iter().zip(stands);
        lettered.all(|(row, stand)| page.has_air(row, height, *stand, air))
    });
    for (row, stand) in rows.iter().zip(free.iter().flatten()) {
        page.text(Layer::Note, row, height, *stand);
    }
    free.is_some()
}

/// Letters a name along the first of some level or upright lines of the sheet that has room for it, else at the end of a
/// leader to the first; false where there is no room at all.
pub(super) fn along_first(
    page: &mut Page,
    text: &str,
    lines: impl Iterator<Item = [Point2; 2]>,
) -> bool {
    let lines: Vec<_> = lines.collect();
    let stand = lines
        .iter()
        .flat_map(|line| along(*line, text, OFF[0]))
        .find(|stand| page.has_air(text, LETTERS, *stand, 0.4));
    if let Some(stand) = stand {
        page.text(Layer::Note, text, LETTERS, stand);
        return true;
    }
    let feet = lines.iter().filter_map(|line| Bounds2::around(*line));
    let mut marks = feet.map(|area| Mark {
        text: text.to_owned(),
        area,
    });
    let led = marks.any(|mark| lead_to(page, &mark));
    if !led {
        page.lose(text);
    }
    led
}

/// Letters a mark beside a long thing and along it, close enough to need no leader; false where there is no room.
pub(super) fn beside(page: &mut Page, text: &str, area: &Bounds2) -> bool {
    let upright = area.height() > area.width();
    let middle = area.centre();
    let (line, half) = if upright {
        let ends = [area.low.y, area.high.y].map(|y| Point2::new(middle.x, y));
        (ends, area.width() / 2.0)
    } else {
        let ends = [area.low.x, area.high.x].map(|x| Point2::new(x, middle.y));
        (ends, area.height() / 2.0)
    };
    let stands = OFF.iter().flat_map(|off| along(line, text, half + off));
    page.place(Layer::Note, text, LETTERS, stands)
}

/// From a thing to the mark beside it, millimetres: the nearest free is taken.
const OFF: [f64; 4] = [0.6, 1.2, 1.8, 2.4];

/// So far off a line and along it, above or left of it first, within its length.
fn along([from, to]: [Point2; 2], text: &str, off: f64) -> Vec<Stand> {
    let upright = (to.y - from.y).abs() > (to.x - from.x).abs();
    let angle = if upright { 90.0 } else { 0.0 };
    let long = (to - from).norm();
    let play = (long - lettering::width(text, LETTERS)) / 2.0 - 1.0;
    if play < 0.0 {
        return Vec::new();
    }
    let middle = nalgebra::center(&from, &to);
    let count = (play / STEP).floor().min(200.0) as i32;
    let room = text_box(middle, text, LETTERS, Align::Centre, angle);
    let mut stands = Vec::new();
    for k in (0..=count).flat_map(|k| [k, -k]) {
        let shift = f64::from(k) * STEP;
        let (beside, other) = if upright {
            (middle.x - room.high.x - off, middle.x - room.low.x + off)
        } else {
            (middle.y - room.low.y + off, middle.y - room.high.y - off)
        };
        for out in [beside, other] {
            let by = if upright {
                Vector2::new(out, shift)
            } else {
                Vector2::new(shift, out)
            };
            stands.push((middle + by, Align::Centre, angle));
        }
    }
    stands
}
