//! What of the counter belongs to which run.

use crate::design::{Passes, Side, Turn};
use crate::geometry::{Bounds2, Point2, Region};
use crate::plan::{CounterSide, Plan, SideKind};

/// Of each run the world rectangle whose counter is its own, overhangs included.
///
/// The square at a corner is the passing run's; the rectangles do not overlap, and together they hold the whole counter.
pub fn territories(plan: &Plan) -> Vec<Bounds2> {
    let runs = plan.runs.iter().enumerate();
    runs.map(|(i, run)| {
        let v = (
            -offset(plan, i, Side::Working),
            run.depth + offset(plan, i, Side::Seating),
        );
        run.rectangle((start(plan, i), end(plan, i)), v)
    })
    .collect()
}

/// Of a flat piece that spans all runs, such as the slab, each run's share of its area, and the middle of that share.
///
/// The shares add up to one, unless there is no area at all.
pub fn shares_by_run(plan: &Plan, region: &Region) -> Vec<(f64, Point2)> {
    let bounds = territories(plan);
    let own: Vec<_> = bounds.iter().map(|b| region.moments_within(b)).collect();
    let whole: f64 = own.iter().map(|m| m.area).sum();
    let share = |area: f64| if whole > 0.0 { area / whole } else { 0.0 };
    own.iter().map(|m| (share(m.area), m.centroid())).collect()
}

/// How far the counter passes the frame on a side of a run; nothing where that side has no face.
fn offset(plan: &Plan, run: usize, side: Side) -> f64 {
    let on_side = |s: &&CounterSide| {
        let face = &plan.faces[s.face];
        face.run == run && face.side == side && !matches!(s.kind, SideKind::Notch(_))
    };
    plan.counter.sides.iter().find(on_side).map_or(0.0, |s| {
        let face = &plan.faces[s.face];
        (s.start - face.start).dot(&face.outward)
    })
}

/// Inner and outer side of the corner where a run starts, the same for both runs.
fn corner_sides(plan: &Plan, later: usize) -> (Side, Side) {
    match plan.design.runs[later].turn.as_deref() {
        Some(Turn::Right) => (Side::Working, Side::Seating),
        _ => (Side::Seating, Side::Working),
    }
}

fn start(plan: &Plan, i: usize) -> f64 {
    if i == 0 {
        return -offset(plan, 0, Side::Left);
    }
    let (inner, outer) = corner_sides(plan, i);
    match plan.design.runs[i].passes {
        Passes::Later => -offset(plan, i - 1, outer),
        Passes::Earlier => plan.runs[i].framed.0 + offset(plan, i - 1, inner),
    }
}

fn end(plan: &Plan, i: usize) -> f64 {
    let run = &plan.runs[i];
    let Some(next) = plan.design.runs.get(i + 1) else {
        return run.length + offset(plan, i, Side::Right);
    };
    let (inner, outer) = corner_sides(plan, i + 1);
    match next.passes {
        Passes::Earlier => run.length + offset(plan, i + 1, outer),
        Passes::Later => run.framed.1 - offset(plan, i + 1, inner),
    }
}

/// How far beside a run's rectangle a side of the counter may lie and still be that run's, millimetres: a counter that follows
/// the frame as measured passes it where the frame is off.
pub(super) fn slack(plan: &Plan) -> f64 {
    let follows = plan.as_built.as_ref().and_then(|f| f.planned());
    if follows.is_some() { 60.0 } else { 1e-6 }
}

/// How much of a line along an axis lies in a rectangle, on its border or so near beside it, millimetres.
pub(super) fn length_within(from: Point2, to: Point2, bounds: &Bounds2, slack: f64) -> f64 {
    let along = usize::from((to.y - from.y).abs() > (to.x - from.x).abs());
    let across = 1 - along;
    let beside =
        from[across] < bounds.low[across] - slack || from[across] > bounds.high[across] + slack;
    let (low, high) = (from[along].min(to[along]), from[along].max(to[along]));
    let shared = high.min(bounds.high[along]) - low.max(bounds.low[along]);
    if beside { 0.0 } else { shared.max(0.0) }
}
