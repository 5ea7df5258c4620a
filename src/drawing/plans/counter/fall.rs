//! The fall of the counter's top: an arrow the way the water runs, with the amount.

use crate::drawing::fit::Fit;
use crate::drawing::occupancy::grown;
use crate::drawing::page::{LETTERS, Page};
use crate::drawing::plans::style::{ARROWHEAD, SYMBOL, sharp};
use crate::drawing::{Align, Layer, lettering};
use crate::geometry::{Bounds2, Point2, Vector2};
use crate::plan::Plan;
use crate::units::{Length, Notation};

/// Length of the arrow, millimetres on the sheet.
const ARROW: f64 = 11.0;

/// One arrow on each run, from its seating side towards the cook, away from those who sit: common practice. Says how many
/// runs had no room for it.
pub(super) fn draw(page: &mut Page, plan: &Plan, fit: &Fit) -> usize {
    let Some(fall) = &plan.design.counter.casting.fall else {
        return 0;
    };
    let text = format!("fall {}", spell(fall.value, plan.design.project.units));
    let missing = (0..plan.runs.len()).filter(|run| !on_run(page, plan, fit, *run, &text));
    missing.count()
}

/// A fall as builders say it: so much per foot, or per metre.
fn spell(fall: f64, notation: Notation) -> String {
    match notation {
        Notation::Imperial => {
            let inches = notation.spell_with_unit(Length::inches(12.0 * fall));
            format!("{inches} per ft")
        }
        Notation::Metric => format!("{:.0} mm per m", fall * 1000.0),
    }
}

fn on_run(page: &mut Page, plan: &Plan, fit: &Fit, number: usize, text: &str) -> bool {
    let run = &plan.runs[number];
    let (near, far) = plan.counter_across(number);
    let steps = 40;
    let us = (0..steps).map(|k| {
        let f = 0.5 + 0.012 * f64::from(k / 2) * if k % 2 == 0 { 1.0 } else { -1.0 };
        run.length * f
    });
    let vs = [0.5, 0.6, 0.4, 0.7, 0.3];
    let mut feet = us.flat_map(|u| vs.map(|f| run.point(u, near + (far - near) * f)));
    feet.any(|middle| place(page, fit.point(middle), -run.away, text))
}

/// The arrow round a middle with the text beside it, where both find room.
fn place(page: &mut Page, middle: Point2, way: Vector2, text: &str) -> bool {
    let (tail, tip) = (middle - way * (ARROW / 2.0), middle + way * (ARROW / 2.0));
    let upright = way.y.abs() > 0.5;
    let width = lettering::width(text, LETTERS);
    let stands = if upright {
        let drop = Vector2::new(2.0, -0.375 * LETTERS);
        [
            (middle + drop, Align::Left, 0.0),
            (middle + Vector2::new(-drop.x, drop.y), Align::Right, 0.0),
        ]
    } else {
        [1.8, -1.8 - LETTERS].map(|dy| (middle + Vector2::new(0.0, dy), Align::Centre, 0.0))
    };
    let Some(room) = Bounds2::around([tail, tip]).map(|b| grown(&b, 3.0)) else {
        return false;
    };
    let stand = stands
        .into_iter()
        .find(|s| page.has_air(text, LETTERS, *s, 0.4));
    let Some(stand) = stand.filter(|_| width > 0.0 && page.taken().is_free(&room)) else {
        return false;
    };
    let side = Vector2::new(-way.y, way.x);
    let base = tip - way * 3.0;
    SYMBOL.line(page, tail, base);
    ARROWHEAD.filled(page, sharp(&[tip, base + side, base - side]), 0.0);
    page.text(Layer::Symbol, text, LETTERS, stand);
    true
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fall_is_spelt_as_builders_say_it() {
        // 1/8 in per ft is a ninety-sixth; 10 mm per m a hundredth.
        assert_eq!(spell(1.0 / 96.0, Notation::Imperial), "1/8\" per ft");
        assert_eq!(spell(0.01, Notation::Metric), "10 mm per m");
    }
}
