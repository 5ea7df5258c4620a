//! What the geometry of a slab refuses.

use crate::design::Design;
use crate::diagnostics::Finding;
use crate::geometry::{SlabFault, SlabTrouble};
use crate::plan::Face;
use crate::plan::counter::side::ShapedSide;

/// What the file must hear of a slab that cannot be made.
pub(in crate::plan::counter) fn fault(
    design: &Design,
    faces: &[Face],
    sides: &[ShapedSide],
    fault: SlabFault,
) -> Finding {
    let counter = &design.counter;
    let n = sides.len();
    let at = fault.at.min(n - 1);
    let name = |i: usize| faces[sides[i % n].side.face].name.as_str();
    let corner = format!("where {} meets {}", name(at + n - 1), name(at));
    let over = &counter.overhang.of(faces[sides[at].side.face].side).place;
    match fault.trouble {
        SlabTrouble::Empty | SlabTrouble::Profile => Finding::error(
            "plan-edge-profile",
            &counter.profile.place,
            "the edge profile cannot be laid on the slab",
        )
        .hint("check the thickness, the turndown and the profile"),
        SlabTrouble::Short | SlabTrouble::Straight => Finding::error(
            "plan-counter-side",
            over,
            format!("nothing is left of the counter's edge along {}", name(at)),
        )
        .hint("reduce the overhangs, the turndown's width or the plan corners, or make the run longer"),
        SlabTrouble::Mismatch => Finding::error(
            "plan-edge-profile",
            &counter.profile.place,
            format!("the edge profile cannot pass from a side with a turndown to one without, {corner}"),
        )
        .hint("choose a square, chamfered or quarter-round edge, or give both sides the turndown"),
        SlabTrouble::EasedMismatch => Finding::error(
            "plan-corner-shape",
            &counter.corners.place,
            format!("a corner between a side with a turndown and one without must be sharp, {corner}"),
        )
        .hint("make the plan corners sharp, or give both sides the turndown"),
        SlabTrouble::Tight => Finding::error(
            "plan-corner-radius",
            &counter.corners.place,
            format!("the plan corner is too small for the edge profile, {corner}"),
        )
        .hint("enlarge the corners, or make them sharp"),
    }
}
