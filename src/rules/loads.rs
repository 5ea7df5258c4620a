//! What the island weighs, piece by piece.

use super::Subject;
use crate::geometry::{Point2, Point3, Region};
use crate::parts::PartKind;
use crate::plan::{Body, BodyOf, Plan};
use crate::takeoff::quantities::weighed_as;
use crate::takeoff::shares_by_run;
use crate::units::{GRAVITY, Mass, Volume};

/// One piece that stays: its weight and the point at which it weighs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Load {
    /// Number of its run; `None` when it spans several.
    pub run: Option<usize>,
    /// What it weighs.
    pub mass: Mass,
    /// Where: the middle of its box, for slab and substrate the middle of the run's own area, millimetres in the world.
    pub at: Point3,
}

impl Load {
    /// Its weight, newtons.
    pub fn newtons(&self) -> f64 {
        self.mass.kg() * GRAVITY
    }
}

/// Every part that stays, and every appliance and filling whose weight the file gives. What spans several runs is shared
/// among them by the area of their own counter, cutouts taken off.
pub(super) fn loads(subject: &Subject) -> Vec<Load> {
    let (plan, assembly) = (subject.plan, subject.assembly());
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
            found.extend(
                shares(plan, part.kind)
                    .iter()
                    .enumerate()
                    .map(|(run, (share, at))| Load {
                        run: Some(run),
                        mass: mass * *share,
                        at: Point3::new(at.x, at.y, middle.z),
                    }),
            );
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

/// Each run's share of the slab or of the sheet below it, and the middle of that share; cutouts are left out. The turndown is
/// taken to be spread over the slab.
fn shares(plan: &Plan, kind: PartKind) -> Vec<(f64, Point2)> {
    let slab = Region {
        outer: plan.counter.outline.clone(),
        holes: plan.counter.slab.cutouts.clone(),
    };
    let is_sheet = kind == PartKind::Substrate;
    shares_by_run(
        plan,
        if is_sheet {
            &plan.counter.substrate
        } else {
            &slab
        },
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn the_slab_weighs_where_it_is() {
        // A run of 10 ft × 30 in without turndown and easing, 10.875 in over the seating side and 2.875 in over the others, with one
        // notch of 30 in × (21 + 2.875) in at the front: 125.75 × 43.75 less 30 × 23.875 = 4,785.3 sq in. Its middle, from the frame's
        // working face: (5,501.6 × 19 - 716.25 × 9.0625) / 4,785.3 = 20.49 in.
        let straight = Trial::sound()
            .with("runs", "[{name: cook, length: 10 ft, depth: 30 in}]")
            .without("openings")
            .without("gas")
            .without("electricity")
            .without("counter.turndown")
            .without("counter.joints")
            .with("counter.corners", "sharp")
            .with("counter.edge", "{square: {eased: 0 in}}");
        let grill = "[{name: grill, kind: grill, at: {from: left, distance: 28 in}, cutout: {width: 30 in, depth: 21 in}, \
                     body: {width: 29-1/2 in, depth: 20-1/2 in, height: 9-1/2 in}, front: {open: {panel_height: 9-1/2 in}}}]";
        let plan = straight.with("appliances", grill).plan();
        let square_inches = plan.counter.outline.area() / 25.4 / 25.4;
        assert!((square_inches - 4785.3).abs() < 0.1, "{square_inches}");
        let (own, at) = shares(&plan, PartKind::Slab)[0];
        assert!((own - 1.0).abs() < 1e-9);
        assert!((at.y / 25.4 - 20.49).abs() < 0.01, "{}", at.y / 25.4);
    }
}
