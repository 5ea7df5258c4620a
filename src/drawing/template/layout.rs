//! How a page is divided: a strip for its lettering at the top, the window for the drawing below.

use crate::catalog::Paper;
use crate::design::Design;
use crate::drawing::followed::followed;
use crate::drawing::lettering;
use crate::geometry::{Bounds2, Point2, Vector2};
use crate::plan::Plan;
use crate::units::Length;

/// The longest page, millimetres: no PDF page may be longer than 200 in.
const LONGEST: f64 = 5000.0;

/// The least window that is any use, millimetres.
const LEAST: f64 = 40.0;

/// Height of the capitals in the strip's small print.
pub(super) const SMALL: f64 = 2.5;

/// Height of the capitals in the strip's title.
pub(super) const TITLE: f64 = 3.5;

/// From one line of small print to the next.
pub(super) const PITCH: f64 = 4.3;

/// Width of the box with the page's mark.
pub(super) const MARK_WIDTH: f64 = 26.0;

/// Width kept for the key map.
const MAP_WIDTH: f64 = 44.0;

/// What a page of one set looks like.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Layout {
    pub(super) width: f64,
    /// Infinite until the roll is cut to length.
    pub(super) height: f64,
    pub(super) margin: f64,
    pub(super) strip: f64,
    /// The strip's small print, in lines that fit.
    pub(super) lines: Vec<String>,
    /// What neighbouring pages share, on the paper.
    pub(super) overlap: f64,
    /// Paper millimetres for a millimetre built, across and up.
    pub(super) scale: Vector2,
}

/// The scale that undoes what the printer does, across and up: drawn by measured.
pub(super) fn correction(design: &Design) -> Vector2 {
    let factor = |(drawn, measured): (Length, Length)| {
        let factor = drawn / measured;
        if factor.is_finite() && factor > 0.0 {
            factor
        } else {
            1.0
        }
    };
    Vector2::new(factor(design.printing.bar_x), factor(design.printing.bar_y))
}

impl Layout {
    /// The pages of the printer's paper; `None` when margins and strip leave no room on it.
    pub(super) fn printed(plan: &Plan) -> Option<Self> {
        let design = &plan.design;
        let printing = &design.printing;
        let paper = printing.paper.value.value;
        let margin = printing.margin.mm().max(0.0);
        let scale = correction(design);
        let layout = Self::with(
            paper.width.mm(),
            paper.height.mm(),
            margin,
            scale,
            &small_print(plan, scale),
        );
        let room = layout.room();
        let overlap = printing
            .overlap
            .mm()
            .clamp(0.0, room.x.min(room.y).max(0.0) / 2.0);
        (room.x >= LEAST && room.y >= LEAST).then_some(Self { overlap, ..layout })
    }

    /// One sheet for everything, its window as large as `room`, nothing corrected.
    pub(super) fn single(plan: &Plan, room: Vector2) -> Self {
        let margin = 10.0;
        let width = room.x + 2.0 * margin;
        let mut print = vec![format!("Full size, 1:1, seen from above. {CAUTION}")];
        print.extend(followed(plan));
        let mut layout = Self::with(width, 0.0, margin, Vector2::new(1.0, 1.0), &print);
        layout.height = room.y + layout.strip + 2.0 * margin;
        layout
    }

    fn with(width: f64, height: f64, margin: f64, scale: Vector2, print: &[String]) -> Self {
        let text = (width - 2.0 * margin - MARK_WIDTH - MAP_WIDTH - 6.0).max(40.0);
        let lines: Vec<_> = print.iter().flat_map(|p| wrap(p, SMALL, text)).collect();
        let strip = 8.2 + PITCH * lines.len() as f64;
        Self {
            width,
            height,
            margin,
            strip: strip.max(18.0),
            lines,
            overlap: 0.0,
            scale,
        }
    }

    /// Width and height of the window.
    fn room(&self) -> Vector2 {
        let height = self.height.min(LONGEST) - self.strip;
        Vector2::new(self.width, height) - Vector2::new(2.0, 2.0) * self.margin
    }

    /// Width and height of what a window shows, and of what two share, in the template's plane.
    pub(super) fn shown(&self) -> (Vector2, Vector2) {
        let overlap = Vector2::new(self.overlap, self.overlap);
        (
            self.room().component_div(&self.scale),
            overlap.component_div(&self.scale),
        )
    }

    /// A roll cut to the length that a window of this height needs.
    pub(super) fn cut(&self, shown: f64) -> Self {
        let height = shown * self.scale.y + self.strip + 2.0 * self.margin;
        Self {
            height: height.min(self.height),
            ..self.clone()
        }
    }

    /// True for a roll not yet cut.
    pub(super) fn is_roll(&self) -> bool {
        !self.height.is_finite()
    }

    /// The paper.
    pub(super) fn paper(&self) -> Paper {
        Paper {
            width: Length::millimetres(self.width),
            height: Length::millimetres(self.height),
        }
    }

    /// The window on the paper.
    pub(super) fn window(&self) -> Bounds2 {
        let m = self.margin;
        Bounds2 {
            low: Point2::new(m, m),
            high: Point2::new(self.width - m, self.height - m - self.strip),
        }
    }

    /// The strip on the paper.
    pub(super) fn strip(&self) -> Bounds2 {
        let window = self.window();
        Bounds2 {
            low: Point2::new(window.low.x, window.high.y),
            high: Point2::new(window.high.x, self.height - self.margin),
        }
    }

    /// The part of the strip for the key map.
    pub(super) fn map(&self) -> Bounds2 {
        let strip = self.strip();
        Bounds2 {
            low: Point2::new(strip.high.x - MAP_WIDTH, strip.low.y),
            high: strip.high,
        }
    }
}

pub(super) const CAUTION: &str = "Before cutting, check every size against the appliance and its instructions. Concrete \
     dust harms: cut wet, guard lungs, eyes and ears.";

fn small_print(plan: &Plan, scale: Vector2) -> Vec<String> {
    let printed = "Full size, 1:1, seen from above. Print at 100 %, never fitted to the page.";
    let corrected = if scale == Vector2::new(1.0, 1.0) {
        "Measure both bars of the calibration page first.".to_owned()
    } else {
        format!("Corrected for your printer: {}.", factors(scale))
    };
    let mut print = vec![format!("{printed} {corrected}"), CAUTION.to_owned()];
    print.extend(followed(plan));
    print
}

/// The correction in words.
pub(super) fn factors(scale: Vector2) -> String {
    format!("× {:.4} across, × {:.4} up the page", scale.x, scale.y)
}

/// A text in lines no wider than `width`; a longer word stands alone.
pub(super) fn wrap(text: &str, height: f64, width: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        match lines.last_mut() {
            Some(line) if lettering::width(&format!("{line} {word}"), height) <= width => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

/// A text cut short with an ellipsis where it is wider than `width`.
pub(super) fn shorten(text: &str, height: f64, width: f64) -> String {
    if lettering::width(text, height) <= width {
        return text.to_owned();
    }
    let mut short = text.to_owned();
    while short.pop().is_some() && lettering::width(&format!("{short}…"), height) > width {}
    format!("{}…", short.trim_end())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_is_wrapped_and_shortened_to_its_width() {
        let lines = wrap(
            "one two three four",
            2.5,
            lettering::width("one two", 2.5) + 0.1,
        );
        assert_eq!(lines, ["one two", "three", "four"]);
        let short = shorten("a very long title of a counter", 3.5, 30.0);
        assert!(
            short.ends_with('…') && lettering::width(&short, 3.5) <= 30.0,
            "{short}"
        );
        assert_eq!(shorten("short", 3.5, 30.0), "short");
    }
}
