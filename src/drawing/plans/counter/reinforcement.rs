//! Steel in the slab: a patch of its mesh, and bars across inward corners.

use crate::catalog::practice;
use crate::drawing::fit::Fit;
use crate::drawing::page::Page;
use crate::drawing::plans::style::{BAR, FINE};
use crate::geometry::{Bounds2, Outline, Point2, Vector2};
use crate::plan::Plan;

/// Length of a bar, common practice: 12 in, millimetres.
pub(super) const BAR_LENGTH: f64 = 304.8;
/// From the corner to each of its two bars, common practice: 2 in and 4 in, millimetres.
const OFF_CORNER: [f64; 2] = [50.8, 101.6];
/// A corner rounder than this needs no bars; a hair is for rounding errors.
const ROUND: f64 = practice::ROUND_INWARD_CORNER + 0.01;
/// The patch of mesh, millimetres on the sheet.
const PATCH: Vector2 = Vector2::new(26.0, 15.0);
/// Wires nearer than this on the sheet run together, millimetres.
const NEAREST: f64 = 1.2;

/// Bars across every sharp inward corner, where the file has them, in the world.
pub(super) fn bars(plan: &Plan) -> Vec<[Point2; 2]> {
    let reinforcement = &plan.design.counter.casting.reinforcement;
    if !reinforcement.corner_bars.as_ref().is_some_and(|b| b.value) {
        return Vec::new();
    }
    let mut corners = inward(&plan.counter.outline, false);
    for cutout in plan.counter.cutouts.iter().filter(|c| !c.open) {
        corners.extend(inward(&cutout.outline, true));
    }
    corners
        .into_iter()
        .flat_map(|corner| OFF_CORNER.map(|off| (corner, off)))
        .map(|((at, into), off)| {
            let middle = at + into * off;
            let half = Vector2::new(-into.y, into.x) * (BAR_LENGTH / 2.0);
            [middle - half, middle + half]
        })
        .collect()
}

/// Corners at which the concrete is inward, with the direction into it: the reflex ones of an outline, or for a hole's
/// outline its convex ones. Rounded corners count by the middle of their arc, when they are tight.
fn inward(outline: &Outline, hole: bool) -> Vec<(Point2, Vector2)> {
    let vertices = outline.vertices();
    let count = vertices.len();
    let mut found = Vec::new();
    for (i, vertex) in vertices.iter().enumerate() {
        let before = &vertices[(i + count - 1) % count];
        let next = &vertices[(i + 1) % count];
        let sharp = vertex.bulge == 0.0 && before.bulge == 0.0;
        let arc = vertex.bulge != 0.0;
        // At the start of an arc the corner is where the sides would meet.
        let (at, incoming, outgoing) = if sharp {
            (vertex.at, vertex.at - before.at, next.at - vertex.at)
        } else if arc && before.bulge == 0.0 {
            let after = &vertices[(i + 2) % count];
            (
                nalgebra::center(&vertex.at, &next.at),
                vertex.at - before.at,
                after.at - next.at,
            )
        } else {
            continue;
        };
        let tight = sharp || (next.at - vertex.at).norm() < ROUND * std::f64::consts::SQRT_2;
        let turn = incoming.perp(&outgoing);
        let wanted = if hole { turn > 1e-6 } else { turn < -1e-6 };
        if !wanted || !tight {
            continue;
        }
        // Away from both sides: out of a hole, or into the concrete at a reflex corner of its outside.
        let into = incoming.normalize() - outgoing.normalize();
        if into.norm() > 1e-6 {
            found.push((at, into.normalize()));
        }
    }
    found
}

pub(super) fn draw_bars(page: &mut Page, plan: &Plan, fit: &Fit) {
    for [from, to] in bars(plan) {
        BAR.line(page, fit.point(from), fit.point(to));
    }
}

/// Draws a patch of the mesh at its true spacing where the slab is free; false where there is no mesh or no room.
pub(super) fn draw_mesh(page: &mut Page, plan: &Plan, fit: &Fit) -> bool {
    let reinforcement = &plan.design.counter.casting.reinforcement;
    let spacing = reinforcement
        .mesh
        .as_ref()
        .and(reinforcement.mesh_spacing.as_ref());
    let Some(spacing) = spacing
        .map(|s| s.mm() * fit.scale.factor)
        .filter(|s| *s >= NEAREST)
    else {
        return false;
    };
    let Some(area) = free_area(page, plan, fit) else {
        return false;
    };
    for axis in 0..2 {
        let (low, high) = (area.low[axis], area.high[axis]);
        let count = ((high - low) / spacing).floor().min(60.0) as u32;
        for k in 1..count.max(1) {
            let mut ends = [area.low, area.high];
            for end in &mut ends {
                end[axis] = low + spacing * f64::from(k);
            }
            FINE.line(page, ends[0], ends[1]);
        }
    }
    true
}

/// A free place for the patch on the slab, the corners of the counter first.
fn free_area(page: &Page, plan: &Plan, fit: &Fit) -> Option<Bounds2> {
    let whole = fit.area(&plan.counter.outline.bounds());
    let step = 2.0;
    let counts =
        (whole.high - whole.low - PATCH).map(|d| (d / step).floor().clamp(-1.0, 400.0) as i32);
    let holes = plan.counter.cutouts.iter();
    let holes: Vec<_> = holes.map(|c| fit.area(&c.flange.bounds())).collect();
    let on_slab = |area: &Bounds2| {
        if holes.iter().any(|h| h.overlaps(area, 0.0)) {
            return false;
        }
        let inside = |r: &crate::plan::RunPlan, number: usize| {
            let (near, far) = plan.counter_across(number);
            let own = fit.area(&r.rectangle(r.framed, (near, far)));
            (0..2).all(|i| own.low[i] < area.low[i] && area.high[i] < own.high[i])
        };
        plan.runs.iter().enumerate().any(|(n, r)| inside(r, n))
    };
    let cells = (0..=counts.y).flat_map(|j| (0..=counts.x).map(move |i| (i, j)));
    let mut areas = cells.map(|(i, j)| {
        let low = whole.low + Vector2::new(f64::from(i), f64::from(j)) * step;
        Bounds2 {
            low,
            high: low + PATCH,
        }
    });
    areas.find(|area| {
        let room = crate::drawing::occupancy::grown(area, 1.5);
        on_slab(area) && page.taken().is_free(&room)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::{Turn, sample};

    #[test]
    fn a_bar_lies_across_the_inward_corner_of_two_runs() {
        let mut design = sample::design(vec![
            sample::run("cook", 3000.0, None, &[]),
            sample::run("bar", 2100.0, Some(Turn::Right), &[]),
        ]);
        design.counter.casting.reinforcement.corner_bars = Some(sample::placed(true));
        let plan = crate::plan::lay_out(design).unwrap();
        let bars = bars(&plan);
        assert_eq!(bars.len(), 2);
        // The bar run turns right at the far end: its working face stands at x = 3000 - 900, the counter's inward corner
        // 62 outside both working faces, at (2038, -62); the concrete lies up and to the right of it.
        let [a, b] = bars[0];
        assert!(((b - a).norm() - 304.8).abs() < 1e-9);
        let middle = nalgebra::center(&a, &b);
        let along = 50.8 / std::f64::consts::SQRT_2;
        assert!(
            (middle - Point2::new(2038.0 + along, -62.0 + along)).norm() < 1e-9,
            "{middle}"
        );
        // The second one lies 50.8 farther in.
        assert!(((bars[1][0] - a).norm() - 50.8).abs() < 1e-9);
    }

    #[test]
    fn a_hole_has_four_inward_corners_and_a_round_one_none() {
        let square = Outline::rectangle(0.0, 0.0, 500.0, 400.0);
        let corners = inward(&square, true);
        assert_eq!(corners.len(), 4);
        assert!(corners.iter().all(|(at, into)| {
            // From the middle outwards.
            into.dot(&(at - Point2::new(250.0, 200.0))) > 0.0
        }));
        let tight = Outline::rounded_rectangle(0.0, 0.0, 500.0, 400.0, 12.0);
        assert_eq!(inward(&tight, true).len(), 4);
        let round = Outline::rounded_rectangle(0.0, 0.0, 500.0, 400.0, 50.0);
        assert!(inward(&round, true).is_empty());
    }
}
