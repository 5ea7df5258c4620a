//! Where a stretch is parted so that every piece fits on a sheet.

use std::cmp::Reverse;

/// A place where a joint may lie.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Place {
    pub at: f64,
    pub on: Support,
}

/// What a joint lies on, the best first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Support {
    /// The middle of a flange that reaches right across.
    Steel,
    /// The middle of a flange at the edge of a cutout.
    Edge,
    /// Nothing: the builder puts blocking under it.
    Nothing,
}

/// How bad a row of joints is: those on nothing, how many, those at the edge of a cutout, and the shortest piece in
/// hundredths.
pub(super) type Cost = (usize, usize, usize, Reverse<u64>);

/// The joints of a stretch with pieces of at most `longest`, and what they cost; as few as can be, on steel where there is
/// any.
pub(super) fn joints(from: f64, to: f64, longest: f64, places: &[Place]) -> (Vec<Place>, Cost) {
    let rows = reachable(from, to, longest, places);
    let mut best: Vec<Option<(Cost, usize)>> = vec![None; rows.len()];
    best[0] = Some(((0, 0, 0, Reverse(u64::MAX)), 0));
    for j in 1..rows.len() {
        for i in 0..j {
            let span = rows[j].at - rows[i].at;
            let Some((cost, _)) = best[i] else {
                continue;
            };
            if span > longest + 1e-6 {
                continue;
            }
            let with = with(cost, rows[j].on, span, j + 1 == rows.len());
            if best[j].is_none_or(|(known, _)| with < known) {
                best[j] = Some((with, i));
            }
        }
    }
    let mut at = rows.len() - 1;
    let cost = best[at].map_or((usize::MAX, 0, 0, Reverse(0)), |b| b.0);
    let mut found = Vec::new();
    while let Some((_, before)) = best[at]
        && before > 0
    {
        found.push(rows[before]);
        at = before;
    }
    found.reverse();
    (found, cost)
}

fn with(cost: Cost, on: Support, span: f64, end: bool) -> Cost {
    let count = |it: bool| usize::from(it && !end);
    (
        cost.0 + count(on == Support::Nothing),
        cost.1 + count(true),
        cost.2 + count(on == Support::Edge),
        Reverse(cost.3.0.min((span * 100.0) as u64)),
    )
}

/// Both ends and the places between them, with places on nothing put in where the next one is out of reach.
fn reachable(from: f64, to: f64, longest: f64, places: &[Place]) -> Vec<Place> {
    let end = |at| Place {
        at,
        on: Support::Steel,
    };
    let inside = |p: &&Place| from + 1.0 < p.at && p.at < to - 1.0;
    let mut known: Vec<Place> = places.iter().filter(inside).copied().collect();
    known.sort_by(|a, b| a.at.total_cmp(&b.at).then(a.on.cmp(&b.on)));
    known.dedup_by(|b, a| b.at - a.at < 1.0);
    known.push(end(to));
    let mut rows = vec![end(from)];
    let mut last = from;
    for place in known {
        let parts = ((place.at - last) / longest.max(1.0) - 1e-9)
            .ceil()
            .clamp(1.0, 200.0);
        let step = (place.at - last) / parts;
        rows.extend((1..parts as usize).map(|k| Place {
            at: last + step * k as f64,
            on: Support::Nothing,
        }));
        rows.push(place);
        last = place.at;
    }
    rows
}

#[cfg(test)]
mod tests {
    use super::*;

    fn steel(at: f64) -> Place {
        Place {
            at,
            on: Support::Steel,
        }
    }

    fn found(from: f64, to: f64, longest: f64, places: &[Place]) -> Vec<f64> {
        joints(from, to, longest, places)
            .0
            .iter()
            .map(|p| p.at)
            .collect()
    }

    #[test]
    fn a_stretch_within_a_sheet_has_no_joint() {
        assert_eq!(found(0.0, 1200.0, 1200.0, &[steel(400.0)]), [0.0; 0]);
    }

    #[test]
    fn as_few_joints_as_can_be_and_no_short_piece() {
        // 3000 of sheets 1200 needs two joints; on studs 400 apart the shortest of three pieces is at most 800.
        let grid: Vec<_> = (1..8).map(|k| steel(400.0 * f64::from(k))).collect();
        let joints = found(0.0, 3000.0, 1200.0, &grid);
        let pieces = [joints[0], joints[1] - joints[0], 3000.0 - joints[1]];
        assert_eq!(joints.len(), 2);
        assert!(
            pieces.iter().all(|p| (800.0..=1200.0).contains(p)),
            "{pieces:?}"
        );
    }

    #[test]
    fn the_edge_of_a_cutout_is_second_best_and_nothing_is_last() {
        let edge = Place {
            at: 1000.0,
            on: Support::Edge,
        };
        assert_eq!(found(0.0, 2000.0, 1200.0, &[edge, steel(1100.0)]), [1100.0]);
        assert_eq!(found(0.0, 2000.0, 1200.0, &[edge]), [1000.0]);
        let (joints, cost) = joints(0.0, 2000.0, 1200.0, &[]);
        assert_eq!(
            (joints.len(), joints[0].at, joints[0].on),
            (1, 1000.0, Support::Nothing)
        );
        assert_eq!(cost.0, 1);
    }
}
