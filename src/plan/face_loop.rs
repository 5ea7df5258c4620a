//! The loop of faces round the island, and the openings in them.

use super::{Corner, Cutout, Face, FaceOpening, PlanLevels, RunPlan};
use crate::design::{Design, Front, Opening, Side, Turn};
use crate::diagnostics::{Finding, Place};
use crate::units::Length;

/// Which sides of the chain's corner after run `i` lie outside: `None` at the chain's end.
fn turn_after(design: &Design, i: usize) -> Option<Turn> {
    design.runs.get(i + 1)?.turn.as_ref().map(|t| t.value)
}

fn turn_before(design: &Design, i: usize) -> Option<Turn> {
    if i == 0 {
        None
    } else {
        design.runs[i].turn.as_ref().map(|t| t.value)
    }
}

/// From where to where along u a long side of run `i` is an outer side.
fn stretch(design: &Design, runs: &[RunPlan], i: usize, side: Side) -> (f64, f64) {
    // A turn to the right has the working sides inside the corner, a turn to the left the seating sides.
    let inside = |turn: Option<Turn>| match side {
        Side::Working => turn == Some(Turn::Right),
        _ => turn == Some(Turn::Left),
    };
    let start = if inside(turn_before(design, i)) {
        runs[i - 1].depth
    } else {
        0.0
    };
    let end = if inside(turn_after(design, i)) {
        runs[i].length - runs[i + 1].depth
    } else {
        runs[i].length
    };
    (start, end)
}

/// The faces in order, without their openings.
pub(super) fn faces(design: &Design, runs: &[RunPlan]) -> Vec<Face> {
    let n = runs.len();
    let order = (0..n)
        .map(|i| (i, Side::Working))
        .chain([(n - 1, Side::Right)])
        .chain((0..n).rev().map(|i| (i, Side::Seating)))
        .chain([(0, Side::Left)]);
    order.map(|(i, side)| face(design, runs, i, side)).collect()
}

fn face(design: &Design, runs: &[RunPlan], i: usize, side: Side) -> Face {
    let run = &runs[i];
    let (start, along, outward, length, turn) = match side {
        Side::Working => {
            let (a, b) = stretch(design, runs, i, side);
            (
                run.point(a, 0.0),
                run.along,
                -run.away,
                b - a,
                turn_before(design, i),
            )
        }
        Side::Seating => {
            let (a, b) = stretch(design, runs, i, side);
            (
                run.point(b, run.depth),
                -run.along,
                run.away,
                b - a,
                turn_after(design, i),
            )
        }
        Side::Right => (
            run.point(run.length, 0.0),
            run.away,
            run.along,
            run.depth,
            None,
        ),
        Side::Left => (
            run.point(0.0, run.depth),
            -run.away,
            -run.along,
            run.depth,
            None,
        ),
    };
    let reflex = match side {
        Side::Working => turn == Some(Turn::Right),
        Side::Seating => turn == Some(Turn::Left),
        _ => false,
    };
    let named = &design.runs[i];
    let letter = match side {
        Side::Working => 'W',
        Side::Seating => 'S',
        Side::Left => 'L',
        Side::Right => 'R',
    };
    Face {
        run: i,
        side,
        mark: format!("{}{letter}", named.mark),
        name: format!("{} run, {}", named.name.value, side.name()),
        start,
        along,
        outward,
        length,
        wall: named.walls.contains(&side),
        corner: if reflex {
            Corner::Reflex
        } else {
            Corner::Convex
        },
        openings: Vec::new(),
    }
}

/// Number of the face on a side of a run; ends of inner runs have none.
fn face_of(faces: &[Face], run: usize, side: Side) -> Option<usize> {
    faces.iter().position(|f| f.run == run && f.side == side)
}

/// Where u (or, on an end, v) of a run lies along one of its faces.
fn s_of(face: &Face, run: &RunPlan, station: f64) -> f64 {
    let point = match face.side {
        Side::Working | Side::Seating => run.point(station, 0.0),
        Side::Left | Side::Right => run.point(0.0, station),
    };
    (point - face.start).dot(&face.along)
}

/// Puts the openings and the open fronts of appliances into their faces.
pub(super) fn place_openings(
    design: &Design,
    runs: &[RunPlan],
    levels: &PlanLevels,
    cutouts: &[Cutout],
    faces: &mut [Face],
    findings: &mut Vec<Finding>,
) {
    for cutout in cutouts.iter().filter(|c| c.open) {
        let appliance = &design.appliances[cutout.appliance];
        let (Some(f), Front::Open { panel_height, .. }) =
            (face_of(faces, cutout.run, Side::Working), &appliance.front)
        else {
            continue;
        };
        let run = &runs[cutout.run];
        let opening = FaceOpening {
            name: appliance.name.clone(),
            kind: None,
            index: cutout.appliance,
            s0: s_of(&faces[f], run, cutout.u0),
            s1: s_of(&faces[f], run, cutout.u1),
            z0: levels.counter_top - panel_height.mm(),
            z1: levels.frame_top,
        };
        insert(
            design,
            levels,
            &mut faces[f],
            opening,
            &appliance.place,
            findings,
        );
    }
    for (index, opening) in design.openings.iter().enumerate() {
        match face_of(faces, opening.run, opening.side) {
            Some(f) if !faces[f].wall => {
                let placed = opening_in(&faces[f], &runs[opening.run], index, opening);
                insert(
                    design,
                    levels,
                    &mut faces[f],
                    placed,
                    &opening.place,
                    findings,
                );
            }
            found => findings.push(no_face(design, opening, found.is_some())),
        }
    }
}

fn opening_in(face: &Face, run: &RunPlan, index: usize, opening: &Opening) -> FaceOpening {
    let across = match opening.side {
        Side::Working | Side::Seating => run.length,
        Side::Left | Side::Right => run.depth,
    };
    let middle = s_of(face, run, opening.station.along(across));
    let half = opening.width.mm() / 2.0;
    FaceOpening {
        name: opening.name.clone(),
        kind: Some(opening.kind),
        index,
        s0: middle - half,
        s1: middle + half,
        z0: opening.sill.mm(),
        z1: opening.sill.mm() + opening.height.mm(),
    }
}

fn no_face(design: &Design, opening: &Opening, wall: bool) -> Finding {
    let run = &design.runs[opening.run].name.value;
    let side = opening.side.name();
    let why = if wall {
        "stands against a wall"
    } else {
        "is in a corner"
    };
    Finding::error(
        "plan-no-face",
        &opening.place,
        format!(
            "'{}' cannot open: the {side} of run '{run}' {why}",
            opening.name
        ),
    )
    .hint("choose another side or run")
}

/// Adds one opening to its face unless it leaves the face or meets another.
fn insert(
    design: &Design,
    levels: &PlanLevels,
    face: &mut Face,
    new: FaceOpening,
    place: &Place,
    findings: &mut Vec<Finding>,
) {
    let spell = |mm: f64| {
        design
            .project
            .units
            .spell_with_unit(Length::millimetres(mm))
    };
    let mut refuse = |found: String, hint: String| {
        findings.push(Finding::error("plan-opening", place, found).hint(hint));
    };
    if new.s0 < -1e-6 || new.s1 > face.length + 1e-6 {
        let past = (-new.s0).max(new.s1 - face.length);
        refuse(
            format!(
                "'{}' passes the end of the {} by {}",
                new.name,
                face.name,
                spell(past)
            ),
            "move it or make it narrower".to_owned(),
        );
    } else if new.z0 < levels.frame_bottom - 1e-6 {
        refuse(
            format!("'{}' reaches below the frame", new.name),
            format!(
                "its lower edge may be {} above the datum or more",
                spell(levels.frame_bottom)
            ),
        );
    } else if new.z1 > levels.frame_top + 1e-6 || new.z0 >= new.z1 {
        refuse(
            format!("'{}' reaches above the top of the frame", new.name),
            format!(
                "the frame's top is {} above the datum",
                spell(levels.frame_top)
            ),
        );
    } else if let Some(other) = face.openings.iter().find(|o| o.meets(&new)) {
        refuse(
            format!(
                "'{}' overlaps '{}' in the {}",
                new.name, other.name, face.name
            ),
            "move one of them".to_owned(),
        );
    } else {
        face.openings.push(new);
    }
}

impl FaceOpening {
    /// True when two openings share area.
    fn meets(&self, other: &Self) -> bool {
        self.s0 < other.s1 - 1e-6
            && other.s0 < self.s1 - 1e-6
            && self.z0 < other.z1 - 1e-6
            && other.z0 < self.z1 - 1e-6
    }
}
