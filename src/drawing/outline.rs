//! Lines round the island in plan.

use crate::geometry::Point2;
use crate::plan::{Layers, Plan};

/// The corners of the finished faces in plan, counter-clockwise; walls stay in the frame's plane.
pub fn finished_corners(plan: &Plan) -> Vec<Point2> {
    let out = Layers::of(&plan.design.trade).finish.outer;
    corners(plan, out)
}

/// The corners of the frame in plan, counter-clockwise.
pub fn frame_corners(plan: &Plan) -> Vec<Point2> {
    corners(plan, 0.0)
}

/// Where each face begins, moved out with the faces on both sides of that corner.
fn corners(plan: &Plan, out: f64) -> Vec<Point2> {
    let faces = &plan.faces;
    let last = faces.last();
    let before = last.into_iter().chain(faces);
    faces
        .iter()
        .zip(before)
        .map(|(face, before)| {
            let moved = |wall: bool| if wall { 0.0 } else { out };
            face.moved_out((before, moved(before.wall)), moved(face.wall))
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::{Side, sample};
    use crate::geometry::Outline;

    #[test]
    fn the_finished_outline_of_a_run_against_a_wall_is_that_on_paper() {
        // 3000 × 900 against a wall at the back; cladding 12 + 6 + 4 = 22: 3044 × 922.
        let design = sample::design(vec![sample::run("cook", 3000.0, None, &[Side::Seating])]);
        let plan = crate::plan::lay_out(design).unwrap();
        let bounds = Outline::polygon(&finished_corners(&plan)).bounds();
        assert!((bounds.width() - 3044.0).abs() < 1e-9);
        assert!((bounds.height() - 922.0).abs() < 1e-9);
        assert!((bounds.high.y - 900.0).abs() < 1e-9);
    }
}
