//! What the framing plan measures: the stud grid of the outer faces, cutouts, runs, depths.

use crate::drawing::elevation::PanelView;
use crate::drawing::plans::chains::{self, WorldChain};
use crate::geometry::{Bounds2, Point2};
use crate::plan::Plan;

/// The chains round the plan, the finest nearest.
pub(super) fn world_chains(plan: &Plan, frame: &Bounds2) -> Vec<WorldChain> {
    let mut found = grids(plan, frame);
    for (number, run) in plan.runs.iter().enumerate() {
        let side = chains::side_of_run(plan, number, frame);
        let ends = [run.point(0.0, 0.0), run.point(run.length, 0.0)];
        let cutouts = plan.cutouts.iter().filter(|c| c.run == number);
        let edges: Vec<Point2> = cutouts
            .flat_map(|c| [run.point(c.u0, 0.0), run.point(c.u1, 0.0)])
            .collect();
        if !edges.is_empty() {
            found.push(WorldChain {
                side,
                name: "cutouts".to_owned(),
                stations: ends.into_iter().chain(edges).collect(),
            });
        }
        if let Some(stations) = chains::inside_corner(plan, number, 0.0, ends) {
            found.push(WorldChain {
                side,
                name: "inside corner".to_owned(),
                stations,
            });
        }
        found.push(WorldChain {
            side,
            name: format!("{} run", plan.design.runs[number].name.value),
            stations: ends.to_vec(),
        });
    }
    found.extend(depths(plan));
    let whole = chains::overall(&found, "frame", frame);
    found.extend(whole);
    chains::merged(plan, found)
}

/// The stud grid of every face that is on the outside of the whole frame; the others have theirs on the elevations.
fn grids(plan: &Plan, frame: &Bounds2) -> Vec<WorldChain> {
    let mut found = Vec::new();
    for (number, face) in plan.faces.iter().enumerate() {
        let (start, out) = (face.start, face.outward);
        let corner = |axis: usize| {
            if out[axis] > 0.0 {
                frame.high[axis]
            } else {
                frame.low[axis]
            }
        };
        let axis = usize::from(out.y.abs() > 0.5);
        let outermost = (start[axis] - corner(axis)).abs() < chains::outermost(plan);
        let Some(view) = PanelView::of_face(plan, number).filter(|_| outermost) else {
            continue;
        };
        let framed = plan.runs.get(face.run).map(|run| (run, run.framed));
        let own = |s: &f64| {
            framed.is_none_or(|(run, (low, high))| {
                let u = run.local(face.point(*s, 0.0)).x;
                u > low - 1.0 && u < high + 1.0
            })
        };
        let grid: Vec<f64> = view.grid(plan).into_iter().filter(own).collect();
        let (low, high) = view.reach();
        let grid = regular(grid, low, high);
        if grid.is_empty() {
            continue;
        }
        let stations = grid.into_iter().chain([low, high]);
        found.push(WorldChain {
            side: chains::side_towards(out),
            name: "stud grid".to_owned(),
            stations: stations.map(|s| face.point(s, 0.0)).collect(),
        });
    }
    found
}

/// Nearer neighbours stand together at a corner or a joint: only the first of them is on the grid, millimetres.
const TOGETHER: f64 = 150.0;

/// The stations that stand clear of both ends and of the one before.
fn regular(mut grid: Vec<f64>, low: f64, high: f64) -> Vec<f64> {
    grid.sort_by(f64::total_cmp);
    let mut last = low;
    grid.retain(|s| {
        let keep = s - last >= TOGETHER && high - s >= TOGETHER;
        if keep {
            last = *s;
        }
        keep
    });
    grid
}

/// The depth of a run at each free end of the island.
fn depths(plan: &Plan) -> Vec<WorldChain> {
    let first = plan.runs.first().map(|run| (run, 0.0, -run.along));
    let last = plan.runs.last().map(|run| (run, run.length, run.along));
    let ends = [first, last.filter(|_| plan.runs.len() > 1)];
    ends.into_iter()
        .flatten()
        .map(|(run, u, out)| WorldChain {
            side: chains::side_towards(out),
            name: "depth".to_owned(),
            stations: vec![run.point(u, 0.0), run.point(u, run.depth)],
        })
        .collect()
}
