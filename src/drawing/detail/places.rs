//! Where on the island each detail is taken.

use crate::design::Side;
use crate::plan::{Corner, Face, Plan, SideKind, UprightKind};

/// A place on a face: the middle of a plain stud.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spot {
    /// Number of the face.
    pub face: usize,
    /// Where along it.
    pub s: f64,
}

/// How far a detail's place keeps from openings and corners, millimetres: as far as can be.
const CLEAR: [f64; 3] = [150.0, 80.0, 30.0];
/// Counter edges whose overhangs differ by more are drawn each.
pub const OTHER_OVERHANG: f64 = 50.0;

/// The middles of the full-height studs of a face that keep clear of openings and corners.
fn plain_studs(plan: &Plan, number: usize, clear: f64) -> Vec<f64> {
    let Some(face) = plan.faces.get(number).filter(|f| !f.wall) else {
        return Vec::new();
    };
    let panels = plan.panels.iter().filter(|p| p.face == Some(number));
    let studs = panels.flat_map(|panel| {
        let studs = panel
            .uprights
            .iter()
            .filter(|u| u.kind == UprightKind::Stud);
        studs.map(|u| {
            let (low, high) = panel.on_face(face, u.p0, u.p1);
            f64::midpoint(low, high)
        })
    });
    let mut studs: Vec<f64> = studs.filter(|s| is_plain(face, *s, clear)).collect();
    studs.sort_by(f64::total_cmp);
    studs
}

fn is_plain(face: &Face, s: f64, clear: f64) -> bool {
    let free = face
        .openings
        .iter()
        .all(|o| s < o.s0 - clear || s > o.s1 + clear);
    free && s > clear && s < face.length - clear
}

/// The first plain stud: on a long side where one keeps well clear, else on an end, else wherever there is one.
pub fn plain_stud(plan: &Plan) -> Option<Spot> {
    let [well, clear, hardly] = CLEAR;
    let find = |is_long: bool, clears: &[f64]| {
        let faces = plan.faces.iter().enumerate();
        let faces =
            faces.filter(|(_, f)| is_long == matches!(f.side, Side::Working | Side::Seating));
        let mut spots = faces.filter_map(|(face, _)| {
            let studs = |clear: &f64| plain_studs(plan, face, *clear).first().copied();
            let s = clears.iter().find_map(studs)?;
            Some(Spot { face, s })
        });
        spots.next()
    };
    let passes = [
        (true, [well, clear]),
        (false, [well, clear]),
        (true, [hardly; 2]),
        (false, [hardly; 2]),
    ];
    passes
        .iter()
        .find_map(|(is_long, clears)| find(*is_long, clears))
}

/// The exposed edges of the counter that differ, each at a plain stud below it: the one over the working side first, and
/// one whose overhang is much larger.
pub fn edges(plan: &Plan) -> Vec<(Spot, usize)> {
    let mut found: Vec<(Spot, usize)> = Vec::new();
    let drops = plan.counter.sides.iter().any(|s| s.dropped);
    for wanted in [true, false] {
        for (number, side) in plan.counter.sides.iter().enumerate() {
            if side.kind != SideKind::Exposed || (drops && side.dropped != wanted) {
                continue;
            }
            let known = found.iter().any(|(_, other)| {
                let other = &plan.counter.sides[*other];
                (other.overhang - side.overhang).abs() <= OTHER_OVERHANG
                    && other.dropped == side.dropped
            });
            if let Some(spot) = under(plan, number).filter(|_| !known) {
                found.push((spot, number));
            }
        }
    }
    found
}

/// A plain stud under a side of the counter.
fn under(plan: &Plan, side: usize) -> Option<Spot> {
    let side = plan.counter.sides.get(side)?;
    let face = plan.faces.get(side.face)?;
    let ends = [side.start, side.end].map(|p| (p - face.start).dot(&face.along));
    let (low, high) = (ends[0].min(ends[1]), ends[0].max(ends[1]));
    let studs = CLEAR.iter().find_map(|&clear| {
        let studs = plain_studs(plan, side.face, clear).into_iter();
        studs
            .into_iter()
            .find(|s| *s > low + clear && *s < high - clear)
    });
    studs.map(|s| Spot { face: side.face, s })
}

/// The first framed opening with a header under boards: number of its face, and its own there.
pub fn framed_opening(plan: &Plan) -> Option<(usize, usize)> {
    let faces = plan.faces.iter().enumerate().filter(|(_, f)| !f.wall);
    let all = faces.flat_map(|(number, face)| {
        let framed = face.openings.iter().enumerate().filter(|(_, o)| {
            o.is_framed(&plan.sizes) && o.kind.is_some() && o.z1 < plan.levels.frame_top - 1.0
        });
        framed.map(move |(opening, _)| (number, opening))
    });
    all.into_iter().next()
}

/// The first cutout that is closed all round, else the first.
pub fn cutout(plan: &Plan) -> Option<usize> {
    let closed = plan.cutouts.iter().position(|c| !c.open);
    closed.or((!plan.cutouts.is_empty()).then_some(0))
}

/// The face that begins at the first corner where two runs meet inwards, both clad.
pub fn inward_corner(plan: &Plan) -> Option<usize> {
    corner(plan, Corner::Reflex)
}

/// The face that begins at the outward corner where two runs meet, else at the first outward corner, both clad.
pub fn outward_corner(plan: &Plan) -> Option<usize> {
    let faces = &plan.faces;
    let between_runs = (0..faces.len()).find(|&i| {
        let before = before(plan, i);
        before.is_some_and(|b| b.run != faces[i].run && !b.wall)
            && faces[i].corner == Corner::Convex
            && !faces[i].wall
    });
    between_runs.or_else(|| corner(plan, Corner::Convex))
}

fn corner(plan: &Plan, kind: Corner) -> Option<usize> {
    (0..plan.faces.len()).find(|&i| {
        let clad = before(plan, i).is_some_and(|b| !b.wall) && !plan.faces[i].wall;
        clad && plan.faces[i].corner == kind
    })
}

/// The face before one in the loop.
fn before(plan: &Plan, face: usize) -> Option<&Face> {
    let count = plan.faces.len();
    plan.faces.get((face + count.checked_sub(1)?) % count)
}
