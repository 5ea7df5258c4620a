//! What the island weighs, piece by piece.

use super::Subject;
use crate::geometry::{Point2, Point3};
use crate::parts::PartKind;
use crate::plan::{Body, BodyOf, Plan};
use crate::takeoff::quantities::weighed_as;
use crate::units::{Mass, Volume};

/// Standard gravity, m/s², exact by definition.
const GRAVITY: f64 = 9.806_65;

/// One piece that stays: its weight and the point at which it weighs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Load {
    /// Number of its run; `None` when it spans several.
    pub run: Option<usize>,
    /// What it weighs.
    pub mass: Mass,
    /// Where: the middle of its box, for the slab the middle of its area, millimetres in the world.
    pub at: Point3,
}

impl Load {
    /// Its weight, newtons.
    pub fn newtons(&self) -> f64 {
        self.mass.kg() * GRAVITY
    }
}

/// Every part that stays, and every appliance and filling whose weight the file gives. What spans several runs is shared
/// among them by the area of their counter.
pub(super) fn loads(subject: &Subject) -> Vec<Load> {
    let (plan, assembly) = (subject.plan, subject.assembly());
    let shares = shares(plan);
    let mut found = Vec::new();
    for part in &assembly.parts {
        let Some((_, density)) = weighed_as(part) else {
            continue;
        };
        let solid = assembly.solid(part);
        let bounds = solid.bounds();
        let middle = part.placement * nalgebra::center(&bounds.low, &bounds.high);
        let mass = density.of(Volume::cubic_millimetres(solid.volume()));
        if matches!(part.kind, PartKind::Slab | PartKind::Substrate) {
            found.extend(shares.iter().enumerate().map(|(run, (share, at))| Load {
                run: Some(run),
                mass: mass * *share,
                at: Point3::new(at.x, at.y, middle.z),
            }));
        } else {
            let run = part.run;
            found.push(Load {
                run,
                mass,
                at: middle,
            });
        }
    }
    found.extend(plan.bodies.iter().filter_map(|body| of_body(plan, body)));
    found
}

/// The weight of what hangs in the counter or fills an opening, where the file gives it.
fn of_body(plan: &Plan, body: &Body) -> Option<Load> {
    let weight = match body.of {
        BodyOf::Appliance(i) => plan.design.appliances.get(i)?.rating.weight.as_ref()?,
        BodyOf::Opening(i) => plan.design.openings.get(i)?.hardware.weight.as_ref()?,
    };
    let bounds = body.bounds(&plan.runs);
    Some(Load {
        run: Some(body.run),
        mass: weight.value,
        at: nalgebra::center(&bounds.low, &bounds.high),
    })
}

/// Each run's share of the counter, and the middle of that share: its frame's rectangle with the overhangs across it.
fn shares(plan: &Plan) -> Vec<(f64, Point2)> {
    let areas: Vec<(f64, Point2)> = plan
        .runs
        .iter()
        .enumerate()
        .map(|(i, run)| {
            let (front, back) = plan.counter_across(i);
            let (u, v) = (
                f64::midpoint(run.framed.0, run.framed.1),
                f64::midpoint(front, back),
            );
            (
                (run.framed.1 - run.framed.0) * (back - front),
                run.point(u, v),
            )
        })
        .collect();
    let whole: f64 = areas.iter().map(|a| a.0).sum();
    areas
        .into_iter()
        .map(|(area, at)| (area / whole.max(1e-9), at))
        .collect()
}
