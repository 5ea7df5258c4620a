//! Bodies: the room that appliances and what fills openings take up inside the island.

use super::{Cutout, Face, PlanLevels, RunPlan};
use crate::design::{Design, Front, OpeningKind, Side};
use crate::diagnostics::{Finding, Place};
use crate::geometry::{Bounds3, Point3};
use crate::units::Length;

/// What a body belongs to: its number in the design.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum BodyOf {
    /// An appliance.
    Appliance(usize),
    /// An opening.
    Opening(usize),
}

/// A box inside the island.
#[derive(Clone, Debug, PartialEq)]
pub struct Body {
    /// What it belongs to.
    pub of: BodyOf,
    /// Number of its run.
    pub run: usize,
    /// From where to where along the run.
    pub u: (f64, f64),
    /// From where to where away from the working face of the frame.
    pub v: (f64, f64),
    /// From where to where above the datum; an appliance's body ends at the top of the counter.
    pub z: (f64, f64),
}

impl Body {
    /// The box in the world.
    pub fn bounds(&self, runs: &[RunPlan]) -> Bounds3 {
        let plan = runs[self.run].rectangle(self.u, self.v);
        Bounds3 {
            low: Point3::new(plan.low.x, plan.low.y, self.z.0),
            high: Point3::new(plan.high.x, plan.high.y, self.z.1),
        }
    }

    fn name_and_place<'a>(&self, design: &'a Design) -> (&'a str, &'a Place) {
        match self.of {
            BodyOf::Appliance(i) => (&design.appliances[i].name, &design.appliances[i].place),
            BodyOf::Opening(i) => (&design.openings[i].name, &design.openings[i].place),
        }
    }
}

/// Places all bodies and refuses those that meet each other, the frame or the ground.
pub(super) fn place(
    design: &Design,
    runs: &[RunPlan],
    faces: &[Face],
    levels: &PlanLevels,
    cutouts: &[Cutout],
    findings: &mut Vec<Finding>,
) -> Vec<Body> {
    let dropped = cutouts.iter().map(|c| of_appliance(design, levels, c));
    let behind = faces.iter().flat_map(|f| behind_face(design, runs, f));
    let bodies: Vec<_> = dropped.chain(behind).collect();
    for body in &bodies {
        check_room(design, runs, levels, body, findings);
    }
    for (i, a) in bodies.iter().enumerate() {
        for b in &bodies[i + 1..] {
            if a.bounds(runs).overlaps(&b.bounds(runs), 1e-6) {
                let (first, second) = (a.name_and_place(design), b.name_and_place(design));
                findings.push(
                    Finding::error(
                        "plan-bodies",
                        second.1,
                        format!(
                            "the bodies of '{}' and '{}' meet inside the island",
                            first.0, second.0
                        ),
                    )
                    .hint("move one of them along its run, or choose a shallower one"),
                );
            }
        }
    }
    bodies
}

/// An appliance's body hangs in the middle of its cutout; with an open front it stands against the far edge.
fn of_appliance(design: &Design, levels: &PlanLevels, cutout: &Cutout) -> Body {
    let a = &design.appliances[cutout.appliance];
    let middle = f64::midpoint(cutout.u0, cutout.u1);
    let half = a.body_width.mm() / 2.0;
    let depth = a.body_depth.mm();
    let v = match &a.front {
        Front::Closed { .. } => {
            let middle = f64::midpoint(cutout.v0, cutout.v1);
            (middle - depth / 2.0, middle + depth / 2.0)
        }
        Front::Open { .. } => (cutout.v1 - depth, cutout.v1),
    };
    Body {
        of: BodyOf::Appliance(cutout.appliance),
        run: cutout.run,
        u: (middle - half, middle + half),
        v,
        z: (levels.counter_top - a.body_height.mm(), levels.counter_top),
    }
}

/// What fills the openings of a face, where it reaches behind it.
fn behind_face(design: &Design, runs: &[RunPlan], face: &Face) -> Vec<Body> {
    let run = &runs[face.run];
    let inside = |o: &super::FaceOpening| -> Option<Body> {
        o.kind?;
        let depth = design.openings[o.index].body_depth.mm();
        if depth <= 0.0 {
            return None;
        }
        let (a, b) = (face.point(o.s0, 0.0), face.point(o.s1, -depth));
        let (a, b) = (run.local(a), run.local(b));
        Some(Body {
            of: BodyOf::Opening(o.index),
            run: face.run,
            u: (a.x.min(b.x), a.x.max(b.x)),
            v: (a.y.min(b.y), a.y.max(b.y)),
            z: (o.z0, o.z1),
        })
    };
    face.openings.iter().filter_map(inside).collect()
}

/// A body stays inside its own run's frame, clear of the panels it does not pass through, and above the frame's foot.
fn check_room(
    design: &Design,
    runs: &[RunPlan],
    levels: &PlanLevels,
    body: &Body,
    findings: &mut Vec<Finding>,
) {
    let run = &runs[body.run];
    let panel = design.trade.track.depth.mm();
    let (name, place) = body.name_and_place(design);
    let spell = |mm: f64| {
        design
            .project
            .units
            .spell_with_unit(Length::millimetres(mm))
    };
    if body.z.0 < levels.frame_bottom - 1e-6 {
        findings.push(
            Finding::error(
                "plan-body",
                place,
                format!(
                    "the body of '{name}' reaches {} below the foot of the frame",
                    spell(levels.frame_bottom - body.z.0)
                ),
            )
            .hint("raise the counter, or choose a lower one"),
        );
    }
    let through =
        |side: Side| matches!(body.of, BodyOf::Opening(i) if design.openings[i].side == side);
    let open = matches!(body.of, BodyOf::Appliance(i) if matches!(design.appliances[i].front, Front::Open { .. }));
    let small = matches!(body.of, BodyOf::Opening(i)
        if matches!(design.openings[i].kind, OpeningKind::Receptacle | OpeningKind::Vent));
    if small {
        return;
    }
    if let BodyOf::Appliance(i) = body.of
        && let Front::Open { panel_height, .. } = &design.appliances[i].front
        && body.v.0 < panel - 1e-6
        && body.z.0 < levels.counter_top - panel_height.mm() - 1e-6
    {
        findings.push(
            Finding::error(
                "plan-body",
                &panel_height.place,
                format!("the body of '{name}' hangs lower than its panel and meets the dropped header"),
            )
            .hint(format!(
                "make panel_height {} or more, or the body less deep so that it stands behind the frame",
                spell(levels.counter_top - body.z.0)
            )),
        );
    }
    let limits = [
        (Side::Left, body.u.0 - run.framed.0),
        (Side::Right, run.framed.1 - body.u.1),
        (Side::Working, body.v.0),
        (Side::Seating, run.depth - body.v.1),
    ];
    for (side, room) in limits {
        let passes = through(side) || (open && side == Side::Working);
        if !passes && room < panel - 1e-6 {
            let short = spell(panel - room);
            findings.push(
                Finding::error(
                    "plan-body",
                    place,
                    format!(
                        "the body of '{name}' meets the frame or the corner at the {} of its run by {short}",
                        side.name()
                    ),
                )
                .hint(format!("move it {short} away, or choose a smaller one")),
            );
        }
    }
}
