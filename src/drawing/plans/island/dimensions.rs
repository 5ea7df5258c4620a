//! What the plan of the island measures: finished faces, counter, cutouts, and what stands around.

use crate::drawing::outline::frame_corners;
use crate::drawing::plans::chains::{self, WorldChain};
use crate::geometry::{Bounds2, Outline, Point2};
use crate::plan::{Layers, Plan};

/// The chains round the plan.
pub(super) fn world_chains(plan: &Plan, finished: &Bounds2, counter: &Bounds2) -> Vec<WorldChain> {
    let out = Layers::of(&plan.design.trade).finish.outer;
    let frame = Outline::polygon(&frame_corners(plan)).bounds();
    let mut found: Vec<WorldChain> = Vec::new();
    for (number, run) in plan.runs.iter().enumerate() {
        let side = chains::side_of_run(plan, number, &frame);
        let ends = ends(plan, number, out);
        let cutouts = plan.cutouts.iter().filter(|c| c.run == number);
        let edges: Vec<Point2> = cutouts
            .flat_map(|c| [run.point(c.u0, 0.0), run.point(c.u1, 0.0)])
            .collect();
        let name = &plan.design.runs[number].name.value;
        if !edges.is_empty() {
            found.push(WorldChain {
                side,
                name: "cutouts".to_owned(),
                stations: ends.into_iter().chain(edges).collect(),
            });
        }
        if let Some(stations) = chains::inside_corner(plan, number, out, ends) {
            found.push(WorldChain {
                side,
                name: "inside corner".to_owned(),
                stations,
            });
        }
        found.push(WorldChain {
            side,
            name: format!("{name} run"),
            stations: ends.to_vec(),
        });
    }
    found.extend(depths(plan, out));
    let whole = chains::overall(&found, "finished", finished);
    let counter = chains::overall(&found, "counter", counter);
    found.extend(whole);
    found.extend(counter);
    chains::merged(plan, found)
}

/// Where a run's finished faces end along it; at a corner as far as the run that it meets reaches.
fn ends(plan: &Plan, number: usize, out: f64) -> [Point2; 2] {
    let Some(run) = plan.runs.get(number) else {
        return [Point2::origin(); 2];
    };
    let wall = |towards: crate::geometry::Vector2| {
        let own = plan.faces.iter().filter(|f| f.wall);
        let at = |f: &crate::plan::Face| {
            f.outward.dot(&towards) > 0.5
                && (run.local(f.start).x.abs() < 1.0
                    || (run.local(f.start).x - run.length).abs() < 1.0)
        };
        own.into_iter().any(at)
    };
    let past = |towards: crate::geometry::Vector2| if wall(towards) { 0.0 } else { out };
    [
        run.point(-past(-run.along), 0.0),
        run.point(run.length + past(run.along), 0.0),
    ]
}

/// The finished depth of a run at each free end of the island.
fn depths(plan: &Plan, out: f64) -> Vec<WorldChain> {
    let count = plan.runs.len();
    let ends = [(0, -1.0), (count.saturating_sub(1), 1.0)];
    let wanted = if count > 1 { 2 } else { 1 };
    let of = |(number, sign): (usize, f64)| {
        let run = plan.runs.get(number)?;
        let wall = |side| {
            let mut own = plan
                .faces
                .iter()
                .filter(|f| f.run == number && f.side == side);
            own.next().is_some_and(|f| f.wall)
        };
        let past = |side| if wall(side) { 0.0 } else { out };
        let v = (
            -past(crate::design::Side::Working),
            run.depth + past(crate::design::Side::Seating),
        );
        Some(WorldChain {
            side: chains::side_towards(run.along * sign),
            name: "depth".to_owned(),
            stations: vec![run.point(0.0, v.0), run.point(0.0, v.1)],
        })
    };
    ends.into_iter().take(wanted).filter_map(of).collect()
}
