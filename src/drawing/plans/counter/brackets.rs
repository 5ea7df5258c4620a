//! Brackets under the overhang of the seating sides.

use crate::design::Side;
use crate::drawing::fit::Fit;
use crate::drawing::page::Page;
use crate::drawing::plans::spot;
use crate::drawing::plans::style::{HIDDEN, sharp};
use crate::geometry::Point2;
use crate::plan::{Face, Layers, Plan, SideKind};

/// How wide a bracket is drawn, millimetres built: a flat bar some 1-1/2 in wide.
const WIDE: f64 = 38.0;

/// Where brackets stand along a face: evenly, no farther apart than asked, half of that from the ends.
fn along(length: f64, spacing: f64) -> Vec<f64> {
    if spacing <= 0.0 || !length.is_finite() || length <= 0.0 {
        return Vec::new();
    }
    let count = (length / spacing - 1e-9).ceil().clamp(1.0, 500.0);
    let apart = length / count;
    let number = count as usize;
    (0..number).map(|k| apart * (k as f64 + 0.5)).collect()
}

/// The faces with brackets, each with where they stand.
fn faces(plan: &Plan) -> Vec<(&Face, Vec<f64>)> {
    let Some(brackets) = &plan.design.counter.casting.brackets else {
        return Vec::new();
    };
    let over = |number: usize| {
        let mut own = plan.counter.sides.iter().filter(|s| s.face == number);
        own.any(|s| s.kind == SideKind::Exposed && s.overhang > 0.0)
    };
    let faces = plan.faces.iter().enumerate();
    faces
        .filter(|(number, f)| f.side == Side::Seating && !f.wall && over(*number))
        .map(|(_, f)| (f, along(f.length, brackets.spacing.mm())))
        .collect()
}

/// Draws them as they lie under the slab, hidden.
pub(super) fn draw(page: &mut Page, plan: &Plan, fit: &Fit) {
    let reach = plan.design.counter.casting.brackets.as_ref();
    let reach = reach.map_or(0.0, |b| b.reach.mm());
    let front = Layers::of(&plan.design.trade).finish.outer;
    for (face, places) in faces(plan) {
        for s in places {
            let corner = |ds: f64, out: f64| fit.point(face.point(s + ds, out));
            let (half, tip) = (WIDE / 2.0, front + reach);
            let points = [
                corner(-half, front),
                corner(-half, tip),
                corner(half, tip),
                corner(half, front),
            ];
            HIDDEN.open(page, sharp(&points));
        }
    }
}

/// Dimensions from one bracket to the next, one on each face, and how far the first reaches.
pub(super) fn measure(page: &mut Page, plan: &Plan, fit: &Fit) {
    let notation = plan.design.project.units;
    let Some(brackets) = &plan.design.counter.casting.brackets else {
        return;
    };
    let front = Layers::of(&plan.design.trade).finish.outer;
    let middle = front + brackets.reach.mm() / 2.0;
    for (face, places) in faces(plan) {
        let between = places.windows(2).map(|pair| -> [Point2; 2] {
            [face.point(pair[0], middle), face.point(pair[1], middle)]
        });
        spot::draw_first(page, notation, fit, between);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn brackets_stand_evenly_and_no_farther_apart_than_asked() {
        // 10 ft at 24 in: five, 24 in apart, the first 12 in from the end. 10 ft 1 in asks for six.
        let places = along(3048.0, 609.6);
        assert_eq!(places.len(), 5);
        assert!((places[0] - 304.8).abs() < 1e-9 && (places[4] - 2743.2).abs() < 1e-9);
        assert_eq!(along(3073.4, 609.6).len(), 6);
        assert!(along(3048.0, 0.0).is_empty() && along(f64::NAN, 600.0).is_empty());
    }
}
