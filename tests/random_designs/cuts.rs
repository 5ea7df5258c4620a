//! The cut list of any design: every stick member once, nothing beyond its stick, nothing nearer than a cut.

use islandwright::catalog::{Need, PUNCH_OUTS};
use islandwright::parts::{Assembly, PartKind};
use islandwright::plan::Plan;
use islandwright::takeoff::Takeoff;
use islandwright::takeoff::cut_list::{CutList, CutStick, PieceKind};
use islandwright::units::{Length, Notation};
use std::collections::BTreeMap;

const ON_STICKS: [PartKind; 12] = [
    PartKind::Stud,
    PartKind::Jamb,
    PartKind::Cripple,
    PartKind::BottomTrack,
    PartKind::TopTrack,
    PartKind::Header,
    PartKind::Sill,
    PartKind::Tie,
    PartKind::Trimmer,
    PartKind::Blocking,
    PartKind::Sleeper,
    PartKind::BaseChannel,
];

/// What is wrong with the cut lists.
pub fn faults(plan: &Plan, assembly: &Assembly, takeoff: &Takeoff) -> Vec<String> {
    let mut found = coverage(plan, assembly, takeoff);
    for list in &takeoff.cut_lists {
        for (number, stick) in list.sticks.iter().enumerate() {
            let fault = stick_fault(plan, list, stick);
            found.extend(fault.map(|f| format!("{} stick {}: {f}", list.section, number + 1)));
        }
        if list.bound > list.cost {
            found.push(format!("{}: bound above cost", list.section));
        }
    }
    found
}

/// Every part of a kind that comes from sticks is cut once, in one piece or in segments that add up to it.
fn coverage(plan: &Plan, assembly: &Assembly, takeoff: &Takeoff) -> Vec<String> {
    let notation = plan.design.project.units;
    let mut cut: BTreeMap<usize, i64> = BTreeMap::new();
    let mut corners = Vec::new();
    let mut times: BTreeMap<(usize, usize), u32> = BTreeMap::new();
    for (number, list) in takeoff.cut_lists.iter().enumerate() {
        let placed = list.sticks.iter().flat_map(|s| &s.cuts).map(|c| c.piece);
        for piece in placed.chain(list.too_long.iter().copied()) {
            *times.entry((number, piece)).or_default() += 1;
            let piece = &list.pieces[piece];
            match piece.kind {
                PieceKind::Part { number, .. } => {
                    *cut.entry(number).or_default() += i64::from(piece.length);
                }
                PieceKind::CornerMesh => corners.push((piece.face, i64::from(piece.length))),
            }
        }
    }
    let twice = times.iter().filter(|(_, n)| **n != 1);
    let mut found: Vec<_> = twice
        .map(|(at, n)| format!("{at:?} cut {n} times"))
        .collect();
    corners.sort_unstable();
    let expected = outer_corners(plan);
    if corners != expected {
        found.push(format!("corner mesh {corners:?} for {expected:?}"));
    }
    for (number, part) in assembly.parts.iter().enumerate() {
        let expected = ON_STICKS
            .contains(&part.kind)
            .then(|| notation.steps(part.length));
        if cut.get(&number).copied() != expected {
            found.push(format!("{}: {:?} steps cut", part.mark, cut.get(&number)));
        }
    }
    found
}

/// Where two clad faces turn outward, and how high: the trade's supplies sell corner mesh in sticks.
fn outer_corners(plan: &Plan) -> Vec<(Option<usize>, i64)> {
    let height = Length::millimetres(plan.levels.frame_top - plan.levels.frame_bottom);
    let faces = &plan.faces;
    let turns_out = |face: &usize| {
        let (before, after) = (
            &faces[(face + faces.len() - 1) % faces.len()],
            &faces[*face],
        );
        let (a, b) = (before.outward, after.along);
        !before.wall && !after.wall && a.x * b.x + a.y * b.y < -0.5
    };
    let own = (0..faces.len()).filter(turns_out);
    own.map(|f| (Some(f), plan.design.project.units.steps(height)))
        .collect()
}

fn stick_fault(plan: &Plan, list: &CutList, stick: &CutStick) -> Option<String> {
    let buying = &plan.design.buying;
    let step = plan.design.project.units.step();
    let steel = list.need != Need::Sleeper;
    let kerf = if steel {
        buying.steel_kerf
    } else {
        buying.saw_kerf
    };
    let room = list.stock[stick.stock].length - buying.end_trim;
    let mut end = Length::ZERO;
    for (order, cut) in stick.cuts.iter().enumerate() {
        let piece = &list.pieces[cut.piece];
        let start = step * f64::from(cut.start);
        let after = if order == 0 { Length::ZERO } else { end + kerf };
        if start < after - Length::millimetres(1e-6) {
            return Some(format!("{} begins before the cut", piece.mark));
        }
        end = start + step * f64::from(piece.length);
        let foot = if cut.reversed { end } else { start };
        if piece.aligned && !on_pitch(plan.design.project.units, foot) {
            return Some(format!("{} has its foot at {foot}", piece.mark));
        }
    }
    (end > room + Length::millimetres(1e-6)).then(|| format!("{end} of {room}"))
}

/// A whole number of pitches from the marked end, each rounded to a step.
fn on_pitch(notation: Notation, foot: Length) -> bool {
    let pitch = notation.step() * notation.steps(Length::millimetres(PUNCH_OUTS.pitch)) as f64;
    let pitches = foot / pitch;
    (pitches - pitches.round()).abs() < 1e-9
}
