//! What a counter cannot be, and where the file says so.

use super::layout::{drop_of, edge_of};
use super::profile::{reach, room};
use super::side::ShapedSide;
use super::{CounterCutout, FORM_THICKNESS, SideKind};
use crate::design::{Design, EdgeProfile, PlanCorner};
use crate::diagnostics::{Finding, Place};
use crate::geometry::{CornerShape, Outline, Point2, SlabCorner, SlabFault, SlabTrouble};
use crate::plan::{Cutout, Face};
use crate::units::Length;

/// The least strip of slab left beside a cutout, millimetres: 1 in, common practice, without source.
const LEAST_RAIL: f64 = 25.4;

/// Chords for measuring distances between outlines, millimetres.
const MEASURED: f64 = 0.05;

fn spell(design: &Design, mm: f64) -> String {
    design
        .project
        .units
        .spell_with_unit(Length::millimetres(mm))
}

/// The profile must fit on every exposed edge, and inside every eased corner.
pub(super) fn profile(design: &Design, sides: &[ShapedSide], findings: &mut Vec<Finding>) {
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
pub(super) fn turndown(
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

/// A notch must leave a piece of the front edge on both its sides.
pub(super) fn notches(
    design: &Design,
    sides: &[ShapedSide],
    faces: &[Face],
    cutouts: &[Cutout],
    findings: &mut Vec<Finding>,
) {
    let n = sides.len();
    let width = drop_of(design).map_or(0.0, |d| d.1);
    for (i, s) in sides.iter().enumerate() {
        let (before, next) = (&sides[(i + n - 1) % n], &sides[(i + 1) % n]);
        let notch = [before, next].into_iter().find_map(|b| match b.side.kind {
            SideKind::Notch(a) if !matches!(s.side.kind, SideKind::Notch(_)) => Some(a),
            _ => None,
        });
        let Some(appliance) = notch else { continue };
        let a = &design.appliances[appliance];
        if s.side.kind == SideKind::Wall {
            findings.push(
                Finding::error(
                    "plan-notch",
                    &a.place,
                    format!("the front of '{}' would open into a wall", a.name),
                )
                .hint("give it a closed front"),
            );
            continue;
        }
        let taken: f64 = [(before, s), (s, next)]
            .into_iter()
            .map(|(first, second)| match second.shape {
                CornerShape::Rounded(leg) | CornerShape::Chamfered(leg) => leg.max(width),
                CornerShape::Sharp if first.side.dropped && second.side.dropped => width,
                CornerShape::Sharp => 0.0,
            })
            .sum();
        let along = (s.side.end - s.side.start).dot(&faces[s.side.face].along);
        if along < taken + LEAST_RAIL {
            findings.push(
                Finding::error(
                    "plan-notch",
                    &a.station.place,
                    format!(
                        "the open front of '{}' leaves {} of the counter's front edge beside it",
                        a.name,
                        spell(design, along.max(0.0))
                    ),
                )
                .hint(format!(
                    "move it so that {} or more is left",
                    spell(design, taken + LEAST_RAIL)
                )),
            );
        }
    }
    for c in cutouts.iter().filter(|c| c.open) {
        let a = &design.appliances[c.appliance];
        let least = (c.u1 - c.u0).min(c.v1 - c.v0);
        if c.radius > 0.0 && 2.0 * c.radius > least - 1.0 {
            findings.push(
                Finding::error(
                    "plan-notch",
                    &a.corner_radius.place,
                    format!(
                        "the corners of the cutout of '{}' are too large for it",
                        a.name
                    ),
                )
                .hint("the radius must be less than half the cutout's width and depth"),
            );
        }
    }
}

/// Overhangs that meet across a narrow court turn a side round, or make the outline cross itself.
pub(super) fn crossings(
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

/// Every closed cutout keeps a strip of slab to the line that the slab rests on, and to cutouts of other runs.
pub(super) fn rails(
    design: &Design,
    rest: &Outline,
    cutouts: &[CounterCutout],
    findings: &mut Vec<Finding>,
) {
    let rest = rest.flatten(MEASURED);
    let flat: Vec<_> = cutouts
        .iter()
        .map(|c| c.outline.flatten(MEASURED))
        .collect();
    for (i, c) in cutouts.iter().enumerate() {
        let a = &design.appliances[c.appliance];
        let inside = c.open || flat[i].iter().all(|p| contains(&rest, *p));
        if !c.open && (!inside || distance(&flat[i], &rest) < LEAST_RAIL - 1e-6) {
            findings.push(rail(
                design,
                &a.station.place,
                format!("beside the cutout of '{}'", a.name),
            ));
        }
        for (j, other) in cutouts.iter().enumerate().skip(i + 1) {
            let apart = distance(&flat[i], &flat[j]) >= LEAST_RAIL - 1e-6;
            if c.run == other.run
                || (apart && !contains(&flat[i], flat[j][0]) && !contains(&flat[j], flat[i][0]))
            {
                continue;
            }
            let b = &design.appliances[other.appliance];
            findings.push(rail(
                design,
                &b.station.place,
                format!("between the cutouts of '{}' and '{}'", a.name, b.name),
            ));
        }
    }
}

fn rail(design: &Design, place: &Place, between: String) -> Finding {
    let least = spell(design, LEAST_RAIL);
    let mut finding = Finding::error(
        "plan-cutout-rail",
        place,
        format!("less than {least} of slab is left {between}"),
    )
    .hint("move the cutout, or make the run longer or deeper");
    finding.limit = format!("{least} of slab beside a cutout");
    finding.source = "common practice".to_owned();
    finding
}

/// The least distance between two polygons that do not cross.
fn distance(a: &[Point2], b: &[Point2]) -> f64 {
    let one_way = |points: &[Point2], ring: &[Point2]| {
        points
            .iter()
            .flat_map(|p| (0..ring.len()).map(move |i| (*p, i)))
            .map(|(p, i)| {
                let (from, to) = (ring[i], ring[(i + 1) % ring.len()]);
                let side = to - from;
                let along = ((p - from).dot(&side) / side.norm_squared()).clamp(0.0, 1.0);
                (p - (from + side * along)).norm()
            })
            .fold(f64::INFINITY, f64::min)
    };
    one_way(a, b).min(one_way(b, a))
}

/// True when a point lies inside a polygon, by crossings.
fn contains(ring: &[Point2], p: Point2) -> bool {
    let crosses = |i: usize| {
        let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
        (a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x)
    };
    (0..ring.len()).filter(|i| crosses(*i)).count() % 2 == 1
}

/// What the file must hear of a slab that cannot be made.
pub(super) fn fault(
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
