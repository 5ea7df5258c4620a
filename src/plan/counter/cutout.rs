//! Cutouts and flanges in the world.

use super::CounterCutout;
use crate::design::Design;
use crate::geometry::{Outline, Point2, Vertex};
use crate::plan::{Cutout, RunPlan};
use std::f64::consts::PI;

/// The cutouts as they are cut.
pub(super) fn cutouts(design: &Design, runs: &[RunPlan], cutouts: &[Cutout]) -> Vec<CounterCutout> {
    cutouts.iter().map(|c| one(design, runs, c)).collect()
}

fn one(design: &Design, runs: &[RunPlan], c: &Cutout) -> CounterCutout {
    let run = &runs[c.run];
    let flange = design.appliances[c.appliance].flange.mm();
    let radius = |grown: f64| {
        if c.radius > 0.0 {
            c.radius + grown
        } else {
            0.0
        }
    };
    let shape = |grown: f64| {
        let (u0, u1, v1) = (c.u0 - grown, c.u1 + grown, c.v1 + grown);
        if c.open {
            open_front(Point2::new(u0, c.v0), Point2::new(u1, v1), radius(grown))
        } else {
            Outline::rounded_rectangle(u0, c.v0 - grown, u1, v1, radius(grown))
        }
    };
    CounterCutout {
        appliance: c.appliance,
        run: c.run,
        outline: shape(0.0).moved(&run.motion()),
        flange: shape(flange).moved(&run.motion()),
        centre: run.point(f64::midpoint(c.u0, c.u1), f64::midpoint(c.v0, c.v1)),
        open: c.open,
    }
}

/// A rectangle with its two far corners rounded.
fn open_front(low: Point2, high: Point2, radius: f64) -> Outline {
    let r = radius.min((high.x - low.x) / 2.0).min(high.y - low.y);
    if r <= 0.0 {
        return Outline::rectangle(low.x, low.y, high.x, high.y);
    }
    let quarter = (PI / 8.0).tan();
    Outline::new(vec![
        Vertex::sharp(low.x, low.y),
        Vertex::sharp(high.x, low.y),
        Vertex::bent(high.x, high.y - r, quarter),
        Vertex::sharp(high.x - r, high.y),
        Vertex::bent(low.x + r, high.y, quarter),
        Vertex::sharp(low.x, high.y - r),
    ])
}
