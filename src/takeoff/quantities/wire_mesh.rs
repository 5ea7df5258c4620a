//! Reinforcing mesh and its standoffs by run.

use super::tally::{At, Tally, area, count, many};
use crate::catalog::Need;
use crate::geometry::{Bounds2, Outline, Region};
use crate::plan::Plan;
use crate::takeoff::asked::{Asked, standoff};
use crate::takeoff::sheets::mesh;
use crate::takeoff::territory::territories;

/// Standoffs are no farther apart, millimetres: 24 in (common practice).
const STANDOFF: f64 = 609.6;

/// Mesh with its laps, then standoffs.
pub(super) fn reckon(tally: &mut Tally) {
    let plan = tally.plan;
    let cover = mesh::cover(plan);
    let pieces = &tally.laying.mesh;
    for run in 0..plan.runs.len() {
        let own: Vec<_> = pieces.iter().filter(|p| p.run == Some(run)).collect();
        let whole = own.iter().filter_map(|p| p.region.as_ref());
        let whole = area(whole.map(Region::area).sum());
        let reckoned = format!(
            "{}, {} inside the edges; cutouts and laps of {} included",
            many(own.len(), "piece"),
            tally.spell(cover),
            tally.spell(mesh::LAP)
        );
        let need = Some(Need::ReinforcingMesh);
        tally.add(need, "reinforcing mesh", At::run(run), whole, reckoned);
    }
    let high = standoff(tally.units(), plan.counter.slab.thickness);
    let bounds = territories(plan);
    let field = field(plan, cover);
    for (run, own) in bounds.iter().enumerate() {
        let found = standoffs(&field, own, cover);
        let reckoned = format!(
            "a grid of {} at most over the mesh; {} high",
            tally.spell(STANDOFF),
            tally.spell(high.mm())
        );
        let need = Asked::long(Need::Standoff, high);
        tally.add(need, "standoff", At::run(run), count(found), reckoned);
    }
}

/// Where mesh lies: the slab less a strip along each side and round each cutout, cut straight.
fn field(plan: &Plan, cover: f64) -> Vec<Region> {
    let counter = &plan.counter;
    let whole = Outline::polygon(&counter.outline.flatten(0.1));
    let strips = counter.sides.iter().map(|s| {
        let (low, high) = (s.start.inf(&s.end), s.start.sup(&s.end));
        let (low, high) = (low.coords.add_scalar(-cover), high.coords.add_scalar(cover));
        Outline::rectangle(low.x, low.y, high.x, high.y)
    });
    let holes = counter.slab.cutouts.iter().map(|hole| {
        let b = hole.bounds();
        Outline::rectangle(
            b.low.x - cover,
            b.low.y - cover,
            b.high.x + cover,
            b.high.y + cover,
        )
    });
    Region::solid(whole).minus(&strips.chain(holes).collect::<Vec<_>>())
}

/// The points of an even grid over a run's share that lie on mesh.
fn standoffs(field: &[Region], own: &Bounds2, cover: f64) -> usize {
    let line = |low: f64, high: f64| -> Vec<f64> {
        // A hair inside, so that the outer points are on the mesh.
        let (low, high) = (low + cover + 0.01, high - cover - 0.01);
        let gaps = ((high - low) / STANDOFF - 1e-9).ceil().max(1.0);
        (0..=gaps as usize)
            .map(|i| low + (high - low) * i as f64 / gaps)
            .collect()
    };
    let rows = line(own.low.y, own.high.y);
    let on_mesh = |x: f64, y: f64| {
        field.iter().any(|r| {
            let stretches = super::coverage::stretches(r, 0, y);
            stretches.iter().any(|s| s.0 <= x && x <= s.1)
        })
    };
    line(own.low.x, own.high.x)
        .iter()
        .map(|x| rows.iter().filter(|y| on_mesh(*x, **y)).count())
        .sum()
}
