//! The runs laid end to end with their turns.

use super::RunPlan;
use crate::design::{Design, Passes, Run, Side, Turn};
use crate::diagnostics::Finding;
use crate::geometry::{Bounds2, Point2, Vector2};
use crate::units::Length;

/// Clear room inside the frame between its two panels that hands and tools need, common practice: four inches.
const CLEAR_INSIDE: f64 = 101.6;

/// Lays out every run and refuses what does not close on itself properly.
pub(super) fn lay_out(design: &Design, findings: &mut Vec<Finding>) -> Vec<RunPlan> {
    let runs = &design.runs;
    let mut plans: Vec<RunPlan> = Vec::with_capacity(runs.len());
    for (i, run) in runs.iter().enumerate() {
        let (origin, along) = match plans.last() {
            None => (Point2::origin(), Vector2::x()),
            Some(before) => turned(before, run),
        };
        plans.push(RunPlan {
            origin,
            along,
            away: Vector2::new(-along.y, along.x),
            length: run.length.mm(),
            depth: run.depth.mm(),
            framed: framed(runs, i),
        });
    }
    for (i, run) in runs.iter().enumerate() {
        check_run(design, i, run, findings);
    }
    check_crossing(design, &plans, findings);
    plans
}

/// Where the next run starts, and its direction.
fn turned(before: &RunPlan, run: &Run) -> (Point2, Vector2) {
    match run.turn.as_deref() {
        Some(Turn::Left) => (before.point(before.length, 0.0), before.away),
        _ => (
            before.point(before.length - run.depth.mm(), before.depth),
            -before.away,
        ),
    }
}

/// From where to where a run has its own frame.
fn framed(runs: &[Run], i: usize) -> (f64, f64) {
    let start = match (i, runs[i].passes) {
        (0, _) | (_, Passes::Later) => 0.0,
        (_, Passes::Earlier) => runs[i - 1].depth.mm(),
    };
    let end = match runs.get(i + 1) {
        Some(next) if next.passes == Passes::Later => next.depth.mm(),
        _ => 0.0,
    };
    (start, runs[i].length.mm() - end)
}

fn check_run(design: &Design, i: usize, run: &Run, findings: &mut Vec<Finding>) {
    let spell = |mm: f64| {
        design
            .project
            .units
            .spell_with_unit(Length::millimetres(mm))
    };
    let panel = design.trade.track.depth.mm();
    let least = 2.0 * panel + CLEAR_INSIDE;
    if run.depth.mm() < least {
        findings.push(
            Finding::error(
                "plan-depth",
                &run.depth.place,
                format!(
                    "run '{}' is {} deep; its two panels and a hand between them need {}",
                    run.name.value,
                    spell(run.depth.mm()),
                    spell(least)
                ),
            )
            .hint("make the run deeper or choose a shallower stud and track"),
        );
    }
    let before = i.checked_sub(1).map_or(0.0, |k| design.runs[k].depth.mm());
    let after = design.runs.get(i + 1).map_or(0.0, |r| r.depth.mm());
    let least = before + after + 2.0 * panel + CLEAR_INSIDE;
    if run.length.mm() < least {
        findings.push(
            Finding::error(
                "plan-length",
                &run.length.place,
                format!(
                    "run '{}' is {} long; with its corners it needs {}",
                    run.name.value,
                    spell(run.length.mm()),
                    spell(least)
                ),
            )
            .hint("a run's length is overall, its corner squares included"),
        );
    }
    for side in &run.walls {
        let inner =
            (*side == Side::Left && i > 0) || (*side == Side::Right && i + 1 < design.runs.len());
        if inner {
            findings.push(
                Finding::error(
                    "plan-wall",
                    &run.name.place,
                    format!(
                        "the {} of run '{}' is in a corner and cannot stand against a wall",
                        side.name(),
                        run.name.value
                    ),
                )
                .hint("name the working or seating side that lies along that wall"),
            );
        }
    }
}

/// Refuses a chain whose runs meet anywhere but at their corners.
fn check_crossing(design: &Design, plans: &[RunPlan], findings: &mut Vec<Finding>) {
    let boxes: Vec<_> = plans.iter().map(RunPlan::bounds).collect();
    for (i, a) in boxes.iter().enumerate() {
        for (j, b) in boxes.iter().enumerate().skip(i + 2) {
            if touches(a, b) {
                findings.push(
                    Finding::error(
                        "plan-crossing",
                        &design.runs[j].name.place,
                        format!(
                            "run '{}' runs into run '{}'",
                            design.runs[j].name.value, design.runs[i].name.value
                        ),
                    )
                    .hint("make the run between them longer, or turn the other way"),
                );
            }
        }
    }
}

/// True when two runs that are no neighbours leave no way between them.
fn touches(a: &Bounds2, b: &Bounds2) -> bool {
    a.overlaps(b, -CLEAR_INSIDE)
}
