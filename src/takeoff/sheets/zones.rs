//! Which part of the counter belongs to which run.

use crate::geometry::{Bounds2, Outline, Region};
use crate::plan::Plan;

/// Farther than any island reaches, millimetres.
const FAR: f64 = 1.0e7;

/// Curves are parted as chords within this of them, millimetres.
const CHORDS: f64 = 0.005;

/// The substrate's share of every run, in the order of the runs; together they are the whole.
///
/// At a corner the run that butts begins over the middle of the other's panel, so that both find steel there; the run
/// that passes has the corner square.
pub(super) fn shares(plan: &Plan) -> Vec<Vec<Region>> {
    let flat = |o: &Outline| Outline::polygon(&o.flatten(CHORDS));
    let whole = &plan.counter.substrate;
    let mut left = vec![Region {
        outer: flat(&whole.outer),
        holes: whole.holes.iter().map(flat).collect(),
    }];
    let mut shares = vec![Vec::new(); plan.runs.len()];
    for run in butting_first(plan) {
        let zone = zone(plan, run);
        shares[run] = left.iter().flat_map(|r| within(r, zone)).collect();
        let taken = rectangle(zone);
        left = left
            .iter()
            .flat_map(|r| r.minus(std::slice::from_ref(&taken)))
            .collect();
    }
    // Nothing should be left; if it is, it is not lost.
    if let Some(first) = shares.first_mut() {
        first.extend(left);
    }
    shares
}

/// Whether a run stops at the frame of the one before it, and of the one after it.
pub(super) fn butts(plan: &Plan, run: usize) -> (bool, bool) {
    let run = &plan.runs[run];
    (run.framed.0 > 0.0, run.framed.1 < run.length)
}

/// The runs in an order in which each comes after those that butt against it.
fn butting_first(plan: &Plan) -> Vec<usize> {
    let runs = 0..plan.runs.len();
    let mut order: Vec<usize> = Vec::with_capacity(runs.len());
    let waits_for = |run: usize, other: usize| {
        (other == run + 1 && butts(plan, other).0) || (other + 1 == run && butts(plan, other).1)
    };
    while let Some(next) = runs.clone().find(|run| {
        let mut missing = runs.clone().filter(|other| !order.contains(other));
        !order.contains(run) && missing.all(|other| !waits_for(*run, other))
    }) {
        order.push(next);
    }
    order
}

/// The rectangle of a run with its overhangs, in the world.
fn zone(plan: &Plan, index: usize) -> Bounds2 {
    let run = &plan.runs[index];
    let overhang = &plan.design.counter.overhang;
    let reach = |mm: f64| plan.design.trade.cladding().mm() + mm + 1.0;
    let (working, seating) = (reach(overhang.working.mm()), reach(overhang.seating.mm()));
    let farthest = working
        .max(seating)
        .max(reach(overhang.left.mm()))
        .max(reach(overhang.right.mm()));
    let half = plan.sizes.panel / 2.0;
    let (before, after) = butts(plan, index);
    let start = if before {
        run.framed.0 - half
    } else {
        -farthest
    };
    let end = if after {
        run.framed.1 + half
    } else {
        run.length + farthest
    };
    run.rectangle((start, end), (-working, run.depth + seating))
}

fn rectangle(b: Bounds2) -> Outline {
    Outline::rectangle(b.low.x, b.low.y, b.high.x, b.high.y)
}

/// What of a region lies in a rectangle.
pub(super) fn within(region: &Region, b: Bounds2) -> Vec<Region> {
    let outside = [
        Outline::rectangle(-FAR, -FAR, b.low.x, FAR),
        Outline::rectangle(b.high.x, -FAR, FAR, FAR),
        Outline::rectangle(-FAR, -FAR, FAR, b.low.y),
        Outline::rectangle(-FAR, b.high.y, FAR, FAR),
    ];
    region.minus(&outside)
}
