//! Crack-control joints: across the counter from edge to edge, broken where a cutout is.

use crate::drawing::fit::Fit;
use crate::drawing::page::Page;
use crate::drawing::plans::chains::{self, WorldChain};
use crate::drawing::plans::style::JOINT;
use crate::geometry::{Bounds2, Point2};
use crate::plan::Plan;

/// A joint: its run and how far from the run's left end.
fn joints(plan: &Plan) -> impl Iterator<Item = (usize, f64)> {
    let joints = plan.design.counter.casting.joints.iter();
    joints
        .filter(|(run, _)| *run < plan.runs.len())
        .map(|(run, at)| (*run, at.mm()))
}

/// The pieces of all joints in the world.
pub(super) fn pieces(plan: &Plan) -> Vec<[Point2; 2]> {
    joints(plan)
        .flat_map(|(run, u)| {
            let (low, high) = plan.counter_across(run);
            let cuts = plan.cutouts.iter().filter(|c| c.run == run);
            let mut holes: Vec<_> = cuts
                .filter(|c| c.u0 < u && u < c.u1)
                .map(|c| (c.v0, c.v1))
                .collect();
            holes.sort_by(|a, b| a.0.total_cmp(&b.0));
            holes.push((high, high));
            let run = &plan.runs[run];
            let mut from = low;
            let mut found = Vec::new();
            for (v0, v1) in holes {
                if v0 > from + 1.0 {
                    found.push([run.point(u, from), run.point(u, v0)]);
                }
                from = from.max(v1);
            }
            found
        })
        .collect()
}

pub(super) fn draw(page: &mut Page, plan: &Plan, fit: &Fit) {
    for [from, to] in pieces(plan) {
        JOINT.line(page, fit.point(from), fit.point(to));
    }
}

/// For each run with joints a chain of them, from edge to edge of the counter.
pub(super) fn chain(
    plan: &Plan,
    run: usize,
    ends: [Point2; 2],
    frame: &Bounds2,
) -> Option<WorldChain> {
    let own = joints(plan).filter(|(r, _)| *r == run);
    let at: Vec<Point2> = own.map(|(r, u)| plan.runs[r].point(u, 0.0)).collect();
    (!at.is_empty()).then(|| WorldChain {
        side: chains::side_of_run(plan, run, frame),
        name: "joints".to_owned(),
        stations: ends.into_iter().chain(at).collect(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::sample;

    #[test]
    fn a_joint_at_five_feet_is_drawn_where_it_is() {
        // A run 3000 × 900: finished faces 22 outside it, overhangs 40 and 250. The joint runs from -62 to 1172.
        let mut design = sample::design(vec![sample::run("cook", 3000.0, None, &[])]);
        design.counter.casting.joints = vec![(0, sample::mm(1524.0)), (7, sample::mm(100.0))];
        let plan = crate::plan::lay_out(design).unwrap();
        let pieces = pieces(&plan);
        assert_eq!(pieces.len(), 1);
        let [from, to] = pieces[0];
        assert!((from - Point2::new(1524.0, -62.0)).norm() < 1e-9);
        assert!((to - Point2::new(1524.0, 1172.0)).norm() < 1e-9);
    }
}
