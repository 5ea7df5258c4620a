//! The counter's substrate and what seals it, by run.

use super::rim::outline;
use super::tally::{At, Tally, area};
use crate::catalog::Need;
use crate::geometry::SlabEdge;
use crate::parts::PartKind;
use crate::plan::SideKind;
use crate::takeoff::territory::{length_within, slack, territories};

/// Coats of sealer, common practice.
const SEALER_COATS: usize = 2;

/// Substrate by run, then sealer by run for the counter and by face for the finish coat.
pub(super) fn reckon(tally: &mut Tally) {
    let plan = tally.plan;
    for (run, bounds) in territories(plan).iter().enumerate() {
        tally.add(
            Some(Need::Substrate),
            "substrate",
            At::run(run),
            area(plan.counter.substrate.area_within(bounds)),
            "its share of the sheet under the slab, inside the turndown, cutouts and notches out",
        );
    }
    sealer(tally);
}

fn sealer(tally: &mut Tally) {
    let counter = &tally.plan.counter;
    let coats = SEALER_COATS as f64;
    for (run, bounds) in territories(tally.plan).iter().enumerate() {
        let top = outline(tally.plan).area_within(bounds);
        let sides = counter.sides.iter().zip(&counter.slab.edges);
        let edges: f64 = sides
            .filter(|(side, _)| side.kind == SideKind::Exposed)
            .map(|(side, edge)| {
                length_within(side.start, side.end, bounds, slack(tally.plan)) * girth(edge)
            })
            .sum();
        let reckoned = format!("top and exposed edges down to the arris, {SEALER_COATS} coats");
        let amount = area((top + edges) * coats);
        tally.add(
            Some(Need::Sealer),
            "sealer, counter",
            At::run(run),
            amount,
            reckoned,
        );
    }
    for (face, _) in tally.clad() {
        let finish = tally.on_face(PartKind::FinishCoat, face);
        let whole: f64 = finish.map(|p| tally.area(p)).sum();
        let reckoned = format!("the area of the finish coat, {SEALER_COATS} coats");
        let at = tally.at_face(face);
        tally.add(
            Some(Need::Sealer),
            "sealer, finish coat",
            at,
            area(whole * coats),
            reckoned,
        );
    }
}

/// The length of an edge profile from the top to where it is lowest, millimetres.
fn girth(edge: &SlabEdge) -> f64 {
    let lowest = edge.profile.iter().map(|p| p.z).fold(0.0, f64::min);
    let mut sum = 0.0;
    for stretch in edge.stretches() {
        sum += stretch.length();
        if stretch.to.y <= lowest + 1e-9 {
            break;
        }
    }
    sum
}
