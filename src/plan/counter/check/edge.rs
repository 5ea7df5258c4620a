//! Edge profile, turndown and plan corners.

use super::spell;
use crate::design::{Design, EdgeProfile, PlanCorner};
use crate::diagnostics::Finding;
use crate::geometry::{CornerShape, Point2, Slab, SlabCorner};
use crate::plan::Face;
use crate::plan::counter::layout::{drop_of, edge_of};
use crate::plan::counter::profile::{reach, room};
use crate::plan::counter::side::ShapedSide;
use crate::plan::counter::{CounterSide, SideKind, corner_room};

/// The profile must fit on every exposed edge, and inside every eased corner.
pub(in crate::plan::counter) fn profile(
    design: &Design,
    sides: &[ShapedSide],
    findings: &mut Vec<Finding>,
) {
    let profile = &design.counter.profile;
    let exposed = sides.iter().filter(|s| s.side.kind == SideKind::Exposed);
    let edges: Vec<_> = exposed.map(|s| edge_of(design, sides, s)).collect();
    let tight = edges
        .iter()
        .map(|e| (reach(profile.value, e), room(profile.value, e)))
        .find(|(reach, room)| *reach > room + 1e-9);
    if let Some((reach, room)) = tight {
        findings.push(
            Finding::error(
                "plan-edge-profile",
                &profile.place,
                format!(
                    "the edge profile reaches {} into an edge that has room for {}",
                    spell(design, reach),
                    spell(design, room)
                ),
            )
            .hint(match profile.value {
                EdgeProfile::HalfRound => "a half-round takes half the height of the edge: widen the turndown or make it less deep",
                _ => "make the profile smaller, or the slab or its turndown larger",
            }),
        );
    }
    let reach = edges
        .iter()
        .map(|e| reach(profile.value, e))
        .fold(0.0, f64::max);
    let eased = sides
        .iter()
        .any(|s| s.shape != CornerShape::Sharp && s.side.kind == SideKind::Exposed);
    if eased && vanishing(design.counter.corners.value) <= reach + 0.5 {
        findings.push(
            Finding::error(
                "plan-corner-radius",
                &design.counter.corners.place,
                format!(
                    "the plan corners are too small for the edge profile, which reaches {} in",
                    spell(design, reach)
                ),
            )
            .hint("enlarge the corners, or make them sharp"),
        );
    }
}

/// The inset at which nothing is left of a square plan corner's easing.
fn vanishing(corner: PlanCorner) -> f64 {
    let shape = match corner {
        PlanCorner::Sharp => CornerShape::Sharp,
        PlanCorner::Chamfered(leg) => CornerShape::Chamfered(leg.mm()),
        PlanCorner::Rounded(radius) => CornerShape::Rounded(radius.mm()),
    };
    let [from, at, to] = [(-1.0, 0.0), (0.0, 0.0), (0.0, 1.0)].map(|(x, y)| Point2::new(x, y));
    SlabCorner::new(from, at, to, shape)
        .easing
        .map_or(0.0, |e| e.vanishes)
}

/// A turndown deeper than the substrate hangs in front of the cladding and must fit into the overhang.
pub(in crate::plan::counter) fn turndown(
    design: &Design,
    sides: &[ShapedSide],
    faces: &[Face],
    findings: &mut Vec<Finding>,
) {
    let Some((depth, width)) = drop_of(design) else {
        return;
    };
    if depth <= design.trade.substrate_thickness.mm() + 1e-9 {
        return;
    }
    let mut named = Vec::new();
    for side in sides.iter().filter(|s| s.side.dropped).map(|s| &s.side) {
        let over = design.counter.overhang.of(faces[side.face].side);
        if width <= side.room + 1e-9 || named.contains(&faces[side.face].side) {
            continue;
        }
        named.push(faces[side.face].side);
        findings.push(
            Finding::error(
                "plan-turndown",
                &over.place,
                format!(
                    "the turndown is {} thick, but below the {} there is {} in front of the finished face or its tile",
                    spell(design, width),
                    faces[side.face].side.name(),
                    spell(design, side.room.max(0.0))
                ),
            )
            .hint("give that side more overhang, make the turndown thinner, or no deeper than the substrate"),
        );
    }
}

/// An eased corner cuts across the corner of the finished faces below it: it must cover that, and a turndown that hangs
/// in front of the cladding must pass it.
pub(in crate::plan::counter) fn corners(
    design: &Design,
    slab: &Slab,
    sides: &[CounterSide],
    findings: &mut Vec<Finding>,
) {
    let hangs = drop_of(design).filter(|d| d.0 > design.trade.substrate_thickness.mm() + 1e-9);
    let n = sides.len();
    let short = (0..n).find_map(|i| {
        let room = corner_room(slab, sides, i)?;
        let needed = hangs.filter(|_| sides[i].dropped).map_or(0.0, |d| d.1);
        (room < needed - 1e-9).then_some((room, needed))
    });
    if let Some((room, needed)) = short {
        findings.push(
            Finding::error(
                "plan-corner-cover",
                &design.counter.corners.place,
                format!(
                    "at a plan corner the counter passes the corner of the finished faces by {}, and {} is needed",
                    spell(design, room),
                    spell(design, needed)
                ),
            )
            .hint("make the plan corners smaller or sharp, or the overhangs larger"),
        );
    }
}
