//! The outline as a whole.

use crate::design::Design;
use crate::diagnostics::Finding;
use crate::geometry::Point2;
use crate::plan::Face;
use crate::plan::counter::side::ShapedSide;
use crate::plan::counter::{FORM_THICKNESS, SideKind};

/// Overhangs that meet across a narrow court turn a side round, or make the outline cross itself.
pub(in crate::plan::counter) fn crossings(
    design: &Design,
    sides: &[ShapedSide],
    faces: &[Face],
    findings: &mut Vec<Finding>,
) {
    let n = sides.len();
    let ends = |i: usize| [sides[i].side.start, sides[i].side.end];
    let meets = |i: usize| {
        (i + 2..n)
            .filter(|j| (j + 1) % n != i)
            .any(|j| cross(ends(i), ends(j)))
    };
    let turned = |i: usize| {
        let along = faces[sides[i].side.face].along;
        let notch = matches!(sides[i].side.kind, SideKind::Notch(_));
        // Between two inner corners the forms of both must be set and struck.
        !notch && (sides[i].side.end - sides[i].side.start).dot(&along) < 4.0 * FORM_THICKNESS
    };
    for (i, s) in sides.iter().enumerate() {
        if turned(i) || meets(i) {
            let face = &faces[s.side.face];
            findings.push(
                Finding::error(
                    "plan-counter-side",
                    &design.counter.overhang.of(face.side).place,
                    format!("the counter runs into itself along {}", face.name),
                )
                .hint("reduce the overhangs or make the runs longer"),
            );
            return;
        }
    }
}

/// True when two straight lines cross or touch.
fn cross(a: [Point2; 2], b: [Point2; 2]) -> bool {
    let side = |l: [Point2; 2], p: Point2| (l[1] - l[0]).perp(&(p - l[0]));
    // The pieces either side of a notch lie on one line without touching.
    let apart = |k: fn(&Point2) -> f64| {
        let reach = |l: [Point2; 2]| (k(&l[0]).min(k(&l[1])), k(&l[0]).max(k(&l[1])));
        reach(a).1 < reach(b).0 || reach(b).1 < reach(a).0
    };
    side(a, b[0]) * side(a, b[1]) <= 0.0
        && side(b, a[0]) * side(b, a[1]) <= 0.0
        && !apart(|p| p.x)
        && !apart(|p| p.y)
}
