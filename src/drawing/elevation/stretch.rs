//! A stretch of an elevation on its sheet: match lines say where it goes on.

use super::window::Window;
use crate::drawing::detail::draw_break;
use crate::drawing::fit::Fit;
use crate::drawing::page::{LETTERS, Page};
use crate::drawing::{Align, Dash, Layer, Pen};
use crate::geometry::{Bounds2, Point2, Vector2};

/// What of an elevation a sheet shows, and on which sheets it goes on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stretch {
    /// What is shown.
    pub window: Window,
    /// Number of the sheet on which it goes on to the left.
    pub left: Option<usize>,
    /// Number of the sheet on which it goes on to the right.
    pub right: Option<usize>,
}

/// How far a match line passes what it cuts, millimetres.
const PAST: f64 = 4.0;

/// How far a break line passes what is broken off, millimetres.
const PAST_BROKEN: f64 = 1.5;

impl Stretch {
    /// All of an elevation.
    pub(super) fn whole() -> Self {
        Self {
            window: Window::whole(),
            left: None,
            right: None,
        }
    }

    /// Draws the match lines from below the ground to `top` on the sheet, and says above each on which sheet the elevation
    /// goes on.
    pub(super) fn draw_match_lines(&self, page: &mut Page, fit: &Fit, area: &Bounds2, top: f64) {
        let number = self.window.number;
        let ends = [
            (self.window.left(), number.saturating_sub(1), self.left),
            (self.window.right(), number, self.right),
        ];
        for (x, number, sheet) in ends {
            let Some(x) = x.map(|x| fit.x(x)) else {
                continue;
            };
            let (foot, head) = (
                Point2::new(x, area.low.y - PAST),
                Point2::new(x, top + PAST),
            );
            page.line(Layer::Symbol, Pen::Heavy, Dash::Phantom, foot, head);
            let sheet = sheet.map_or(String::new(), |n| format!(", see sheet {n}"));
            let text = format!("match line {}{sheet}", letter(number));
            let at = Point2::new(x, head.y + 0.5 * LETTERS);
            page.text(Layer::Symbol, &text, LETTERS, (at, Align::Centre, 0.0));
        }
    }
}

impl Stretch {
    /// True when something of what is `seen` is broken off at an end.
    pub(super) fn is_broken_off(&self, seen: &Bounds2) -> bool {
        self.breaks(seen).next().is_some()
    }

    /// Where something is broken off, with the way out.
    fn breaks(&self, seen: &Bounds2) -> impl Iterator<Item = (f64, f64)> {
        let [left, right] = self.window.breaks();
        let left = left.filter(|x| seen.low.x < x + 1.0).map(|x| (x, -1.0));
        let right = right.filter(|x| seen.high.x > x - 1.0).map(|x| (x, 1.0));
        left.into_iter().chain(right)
    }

    /// Draws a thin line with a zigzag where the elevation is broken off, as ISO 128 has it.
    pub(super) fn draw_breaks(&self, page: &mut Page, fit: &Fit, seen: &Bounds2) {
        let past = Vector2::new(0.0, PAST_BROKEN);
        for (x, out) in self.breaks(seen) {
            let foot = fit.point(Point2::new(x, seen.low.y)) - past;
            let head = fit.point(Point2::new(x, seen.high.y)) + past;
            draw_break(page, foot, head, Vector2::new(out, 0.0));
        }
    }
}

/// A to Z for the first 26 match lines, then AA, AB …
fn letter(number: usize) -> String {
    let mut left = number;
    let mut letters = Vec::new();
    while left > 0 {
        let digit = (left - 1) % 26;
        letters.push(char::from(b'A' + digit as u8));
        left = (left - 1) / 26;
    }
    letters.iter().rev().collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn match_lines_are_lettered_through() {
        let letters = [1, 2, 26, 27, 52, 53].map(letter);
        assert_eq!(letters, ["A", "B", "Z", "AA", "AZ", "BA"]);
    }
}
