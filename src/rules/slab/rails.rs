//! Rails: the strips of slab left beside cutouts, and the steel under them.

use crate::plan::{Cutout, PanelOf, Plan};
use crate::rules::Answers;

/// A strip of slab beside a cutout, in its run's coordinates, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Rail {
    /// Number of the appliance whose cutout it is beside.
    pub appliance: usize,
    /// Which side of the cutout, in words.
    pub beside: &'static str,
    /// Across: from the cutout to what ends it.
    pub width: f64,
    /// Along: the length of the cutout's side.
    pub span: f64,
    /// True where steel runs under it along its whole length.
    pub carried: bool,
}

/// The rails of every cutout.
pub(super) fn rails(plan: &Plan) -> Vec<Rail> {
    let mut found = Vec::new();
    for cutout in &plan.cutouts {
        let (front, back) = plan.counter_across(cutout.run);
        if !cutout.open {
            found.push(rail(plan, cutout, "in front of", cutout.v0 - front));
        }
        found.push(rail(plan, cutout, "behind", back - cutout.v1));
        found.extend(beside(plan, cutout));
    }
    found
}

/// The rails, or the answer that there is none.
pub(super) fn or_say_none(plan: &Plan, answers: &mut Answers) -> Vec<Rail> {
    let found = rails(plan);
    if found.is_empty() {
        answers.nothing("there is no cutout");
    }
    found
}

/// The rail to the next cutout on the right, and those to the ends of the run.
fn beside(plan: &Plan, cutout: &Cutout) -> Vec<Rail> {
    let run = &plan.runs[cutout.run];
    let others = plan.cutouts.iter().filter(|c| c.run == cutout.run);
    let left = others.clone().any(|c| c.u1 <= cutout.u0);
    let right = others.filter(|c| c.u0 >= cutout.u1).map(|c| c.u0);
    let next = right.fold(f64::INFINITY, f64::min);
    let mut found = Vec::new();
    if !left {
        found.push(rail(
            plan,
            cutout,
            "left of",
            cutout.u0 - run.framed.0.min(cutout.u0),
        ));
    }
    let end = if next.is_finite() {
        next
    } else {
        run.framed.1.max(cutout.u1)
    };
    found.push(rail(plan, cutout, "right of", end - cutout.u1));
    found
}

fn rail(plan: &Plan, cutout: &Cutout, beside: &'static str, width: f64) -> Rail {
    let along = matches!(beside, "in front of" | "behind");
    let span = if along {
        cutout.u1 - cutout.u0
    } else {
        cutout.v1 - cutout.v0.max(0.0)
    };
    Rail {
        appliance: cutout.appliance,
        beside,
        width,
        span,
        carried: is_carried(plan, cutout, beside),
    }
}

/// How near steel must lie to the cutout's edge to carry a rail: four inches, the depth of a frame panel.
const NEAR: f64 = 101.6;

/// True when a bulkhead of the cutout's run stands from u to u.
fn bulkhead(plan: &Plan, run: usize, is_near: impl Fn(f64, f64) -> bool) -> bool {
    let panels = plan.panels.iter().filter(|p| p.run == run);
    let mut stands = panels.filter(|p| matches!(p.of, PanelOf::Bulkhead(_)));
    stands.any(|p| {
        let u = plan.runs[run].local(p.start).x;
        is_near(u, u + plan.sizes.panel)
    })
}

/// True when a tie, trimmer, blocking or panel runs along the edge of the cutout on that side, near it.
fn is_carried(plan: &Plan, cutout: &Cutout, beside: &str) -> bool {
    let (depth, panel) = (plan.runs[cutout.run].depth, plan.sizes.panel);
    let crossings = || plan.crossings.iter().filter(|c| c.run == cutout.run);
    let covers = |a: (f64, f64), b: (f64, f64)| a.0 <= b.0 + NEAR && a.1 >= b.1 - NEAR;
    let (u, v) = ((cutout.u0, cutout.u1), (cutout.v0.max(0.0), cutout.v1));
    match beside {
        "in front of" => {
            let panel = cutout.v0 - panel <= NEAR;
            panel
                || crossings().any(|c| {
                    covers(c.u, u)
                        && (cutout.v0 - c.v.1).abs() <= NEAR
                        && c.v.1 - c.v.0 < c.u.1 - c.u.0
                })
        }
        "behind" => {
            let panel = depth - panel - cutout.v1 <= NEAR;
            panel
                || crossings().any(|c| {
                    covers(c.u, u)
                        && (c.v.0 - cutout.v1).abs() <= NEAR
                        && c.v.1 - c.v.0 < c.u.1 - c.u.0
                })
        }
        "left of" => {
            let ends = cutout.u0 - plan.runs[cutout.run].framed.0 <= panel + NEAR
                || bulkhead(plan, cutout.run, |_, u1| (cutout.u0 - u1).abs() <= NEAR);
            ends || crossings().any(|c| covers(c.v, v) && (cutout.u0 - c.u.1).abs() <= NEAR)
        }
        _ => {
            let ends = plan.runs[cutout.run].framed.1 - cutout.u1 <= panel + NEAR
                || bulkhead(plan, cutout.run, |u0, _| (u0 - cutout.u1).abs() <= NEAR);
            ends || crossings().any(|c| covers(c.v, v) && (c.u.0 - cutout.u1).abs() <= NEAR)
        }
    }
}
