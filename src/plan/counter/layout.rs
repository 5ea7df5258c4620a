//! The counter laid out from the faces and the cutouts.

use super::profile::{self, Edge};
use super::side::ShapedSide;
use super::{CounterCutout, CounterPlan, SideKind, TurndownLine, check, cutout, side};
use crate::design::Design;
use crate::diagnostics::Finding;
use crate::geometry::{Outline, ProfilePoint, Region, Slab, SlabEdge};
use crate::plan::{Cutout, Face, RunPlan};

/// Lays the counter out; `None`, with findings, when it cannot be made.
pub(in crate::plan) fn lay_out(
    design: &Design,
    runs: &[RunPlan],
    faces: &[Face],
    cutouts: &[Cutout],
    findings: &mut Vec<Finding>,
) -> Option<CounterPlan> {
    let shaped = side::sides(design, runs, faces, cutouts);
    let before = findings.len();
    check::profile(design, &shaped, findings);
    check::turndown(design, &shaped, faces, findings);
    check::notches(design, &shaped, faces, cutouts, findings);
    if findings.len() == before {
        check::crossings(design, &shaped, faces, findings);
    }
    if findings.len() > before {
        return None;
    }
    let holes = cutout::cutouts(design, runs, cutouts);
    let slab = Slab {
        edges: shaped.iter().map(|s| edge(design, &shaped, s)).collect(),
        thickness: design.counter.thickness.mm(),
        cutouts: closed(&holes),
    };
    let slab = match slab.checked() {
        Ok(slab) => slab,
        Err(fault) => {
            findings.push(check::fault(design, faces, &shaped, fault));
            return None;
        }
    };
    let (depth, width) = drop_of(design).unwrap_or((0.0, 0.0));
    let insets: Vec<_> = shaped
        .iter()
        .map(|s| if s.side.dropped { width } else { 0.0 })
        .collect();
    let substrate = Region {
        outer: slab.line(&insets),
        holes: slab.cutouts.clone(),
    };
    let sides: Vec<_> = shaped.iter().map(|s| s.side.clone()).collect();
    check::corners(design, &slab, &sides, findings);
    check::rails(design, &substrate.outer, &holes, findings);
    (findings.len() == before).then(|| CounterPlan {
        outline: slab.outline(),
        turndown: turndown_lines(&slab, &shaped, &insets),
        turndown_depth: depth,
        turndown_width: width,
        sides,
        cutouts: holes,
        slab,
        substrate,
    })
}

fn closed(holes: &[CounterCutout]) -> Vec<Outline> {
    holes
        .iter()
        .filter(|c| !c.open)
        .map(|c| c.outline.clone())
        .collect()
}

/// Depth and width of the turndown.
pub(super) fn drop_of(design: &Design) -> Option<(f64, f64)> {
    design
        .counter
        .turndown
        .as_ref()
        .map(|t| (t.depth.mm(), t.width.mm()))
}

/// The edge that the profile of an exposed side is laid on.
pub(super) fn edge_of(design: &Design, all: &[ShapedSide], side: &ShapedSide) -> Edge {
    Edge {
        thickness: design.counter.thickness.mm(),
        drop: drop_of(design).filter(|_| side.side.dropped),
        ease_bottom: side.side.dropped || all.iter().all(|s| !s.side.dropped),
    }
}

fn edge(design: &Design, all: &[ShapedSide], side: &ShapedSide) -> SlabEdge {
    let profile: Vec<ProfilePoint> = match side.side.kind {
        SideKind::Exposed => {
            profile::points(design.counter.profile.value, &edge_of(design, all, side))
        }
        SideKind::Wall | SideKind::Notch(_) => {
            SlabEdge::plain_profile(design.counter.thickness.mm())
        }
    };
    SlabEdge {
        corner: side.side.start,
        shape: side.shape,
        profile,
    }
}

/// The inner lines of the turndown, each from the side before which there is none to the next.
fn turndown_lines(slab: &Slab, sides: &[ShapedSide], insets: &[f64]) -> Vec<TurndownLine> {
    let n = sides.len();
    let dropped = |i: usize| sides[i % n].side.dropped;
    if sides.iter().all(|s| s.side.dropped) {
        return vec![TurndownLine {
            vertices: slab.line(insets).vertices().to_vec(),
            closed: true,
        }];
    }
    (0..n)
        .filter(|i| dropped(*i) && !dropped(i + n - 1))
        .map(|first| {
            let count = (0..n).take_while(|k| dropped(first + k)).count();
            let corners = (first..=first + count).map(|i| i % n);
            TurndownLine {
                vertices: corners
                    .flat_map(|i| slab.corner(i).line(insets[(i + n - 1) % n], insets[i]))
                    .collect(),
                closed: false,
            }
        })
        .collect()
}
