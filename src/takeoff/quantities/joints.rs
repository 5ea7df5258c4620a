//! Joints of boards and substrate to tape, and corner mesh.

use super::coverage::{Edge, boards, edges};
use super::tally::{At, Tally, length};
use crate::catalog::Need;
use crate::geometry::Region;
use crate::plan::{Corner, Courses};
use crate::takeoff::corners::{begins_at, height};

/// Joint tape by face, then corner mesh; then tape and blocking of the substrate by run.
pub(super) fn reckon(tally: &mut Tally) {
    let gap = Courses::of(&tally.plan.design.trade, &tally.plan.levels).gap;
    let height = height(tally.plan).mm();
    for (index, _) in tally.clad() {
        let boards = boards(tally, index);
        let upright = shared(&boards, 1, gap);
        let level = shared(&boards, 0, gap);
        let inner = if begins_at(tally.plan, index, Corner::Reflex) {
            height
        } else {
            0.0
        };
        let corner = if inner > 0.0 {
            ", and the inner corner"
        } else {
            ""
        };
        let reckoned = format!(
            "edges that boards share: {} upright, {} between courses{corner}",
            tally.spell(upright),
            tally.spell(level)
        );
        let at = tally.at_face(index);
        let whole = length(upright + level + inner);
        tally.add(Some(Need::JointTape), "joint tape", at, whole, reckoned);
    }
    for (index, _) in tally.clad() {
        if begins_at(tally.plan, index, Corner::Convex) {
            let at = tally.at_face(index);
            let reckoned = "the outer corner where the face begins, foot to top of the frame";
            tally.add(
                Some(Need::CornerMesh),
                "corner mesh",
                at,
                length(height),
                reckoned,
            );
        }
    }
    substrate(tally);
}

/// Tape over the joints of the substrate, so that no slurry runs through, then blocking under those that lie on nothing. A
/// joint between two runs is the later one's.
fn substrate(tally: &mut Tally) {
    let laid = &tally.laying.substrate;
    let pieces: Vec<(usize, Region)> = laid
        .pieces
        .iter()
        .filter_map(|p| Some((p.run?, p.region.clone()?)))
        .collect();
    for run in 0..tally.plan.runs.len() {
        let joint = |i: usize| -> f64 {
            let before = pieces[..i].iter();
            let pairs = before.map(|(_, other)| [other.clone(), pieces[i].1.clone()]);
            pairs.map(|p| shared(&p, 0, 0.0) + shared(&p, 1, 0.0)).sum()
        };
        let own = (0..pieces.len()).filter(|i| pieces[*i].0 == run);
        let whole = length(own.map(joint).sum());
        let reckoned = "edges that pieces of the substrate share";
        let need = Need::JointTape;
        tally.add(
            Some(need),
            "joint tape, substrate",
            At::run(run),
            whole,
            reckoned,
        );
    }
    for (run, bare) in laid.unsupported.iter().enumerate() {
        let reckoned = "joints of the substrate that lie on no steel";
        let item = "blocking, substrate";
        tally.add(None, item, At::run(run), length(*bare), reckoned);
    }
}

/// How much edge along an axis the boards share across a gap, millimetres.
fn shared(boards: &[Region], axis: usize, gap: f64) -> f64 {
    let numbered = boards.iter().enumerate();
    let edges: Vec<(usize, Edge)> = numbered
        .flat_map(|(board, region)| edges(region, axis).into_iter().map(move |e| (board, e)))
        .collect();
    let (after, before): (Vec<_>, Vec<_>) = edges.into_iter().partition(|(_, e)| e.inside_above);
    let mut sum = 0.0;
    for (a, low) in &before {
        for (b, high) in &after {
            let apart = high.at - low.at;
            if a != b && (-1e-3..gap + 1e-3).contains(&apart) {
                let overlap = low.span.1.min(high.span.1) - low.span.0.max(high.span.0);
                sum += overlap.max(0.0);
            }
        }
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Outline;

    #[test]
    fn four_boards_share_the_cross_between_them() {
        // Two courses of 600 and 300 with a gap of 3; joints at 1000 below and 500 above; 2003 long.
        let board = |s0, z0, s1, z1| Region::solid(Outline::rectangle(s0, z0, s1, z1));
        let boards = [
            board(0.0, 0.0, 1000.0, 600.0),
            board(1003.0, 0.0, 2003.0, 600.0),
            board(0.0, 603.0, 500.0, 903.0),
            board(503.0, 603.0, 2003.0, 903.0),
        ];
        assert_eq!(shared(&boards, 1, 3.0), 600.0 + 300.0);
        // Along the course: 2003 less the gaps of both courses, 3 each.
        assert_eq!(shared(&boards, 0, 3.0), 2003.0 - 3.0 - 3.0);
    }
}
