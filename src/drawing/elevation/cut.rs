//! Cuts: where the viewer stands between two legs of the island, the run that joins them is cut through.

use crate::drawing::fit::Fit;
use crate::drawing::hatch;
use crate::drawing::hidden::Shape;
use crate::drawing::page::Page;
use crate::geometry::{Bounds2, Point2, Solid};
use crate::plan::{Corner, Face, Layers, Plan};

/// Between hatch lines, millimetres on the sheet.
const HATCH: f64 = 3.0;

/// The sections of the runs that begin at the inward corners of a face, in its s and z: from working to seating side
/// as finished, from the foot of the frame to the counter's lower edge.
pub(super) fn through(plan: &Plan, number: usize) -> Vec<Bounds2> {
    let count = plan.faces.len();
    let Some(face) = plan.faces.get(number) else {
        return Vec::new();
    };
    let out = Layers::of(&plan.design.trade).finish.outer;
    let before = (face.corner == Corner::Reflex).then(|| &plan.faces[(number + count - 1) % count]);
    let next = &plan.faces[(number + 1) % count];
    let after = (next.corner == Corner::Reflex).then_some(next);
    let lower_edge = plan.levels.slab_bottom - plan.counter.turndown_depth;
    let top = plan.levels.frame_top.min(lower_edge);
    let section = |other: &Face, sign: f64, at: f64| {
        let depth = plan.runs.get(other.run).map_or(0.0, |run| run.depth);
        let (near, far) = (at - sign * out, at + sign * (depth + out));
        Bounds2 {
            low: Point2::new(near.min(far), plan.levels.frame_bottom),
            high: Point2::new(near.max(far), top),
        }
    };
    let before = before.map(|other| section(other, -1.0, 0.0));
    let after = after.map(|other| section(other, 1.0, face.length));
    before.into_iter().chain(after).collect()
}

/// Before all that an island can have before a face, millimetres.
const FRONT: f64 = 1e6;

/// A plate of a section's outline that hides all that the view has there.
pub(super) fn screen(section: &Bounds2) -> Shape {
    let plate = Solid::cuboid(section.width(), section.height(), 1.0);
    let mut faceted = plate.faceted(1.0);
    for point in &mut faceted.points {
        *point += nalgebra::Vector3::new(section.low.x, section.low.y, FRONT);
    }
    Shape::new(&faceted)
}

/// Hatches a section at 45 degrees.
pub(super) fn hatch(page: &mut Page, fit: &Fit, section: &Bounds2) {
    hatch::hatch(page, &fit.area(section), HATCH);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::{Turn, sample};

    #[test]
    fn the_run_between_two_legs_is_cut_at_its_own_width() {
        let run = |name, length, turn| sample::run(name, length, turn, &[]);
        let design = sample::design(vec![
            run("ash", 3000.0, None),
            run("birch", 4000.0, Some(Turn::Right)),
            run("cedar", 3000.0, Some(Turn::Right)),
        ]);
        let plan = crate::plan::lay_out(design).unwrap();
        // The working face of the first run ends at the inward corner to the second, 900 deep with 22 of cladding on
        // both sides.
        let cuts = through(&plan, 0);
        assert_eq!(cuts.len(), 1);
        let length = plan.faces[0].length;
        assert!((cuts[0].low.x - (length - 22.0)).abs() < 1e-9);
        assert!((cuts[0].high.x - (length + 922.0)).abs() < 1e-9);
        assert_eq!(through(&plan, 1).len(), 2);
        let end = plan
            .faces
            .iter()
            .position(|f| f.side == crate::design::Side::Left);
        assert!(through(&plan, end.unwrap()).is_empty());
    }
}
