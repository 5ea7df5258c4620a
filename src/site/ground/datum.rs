//! The datum: the highest point of the ground under the island.

use super::surface::Surface;
use crate::geometry::{Bounds2, Point2};
use crate::plan::Plan;

/// The ground beyond the levels is looked at in steps of this along the sides of the island, millimetres.
const STEP: f64 = 50.0;

/// The ground that a run's frame takes.
pub(super) fn footprints(plan: &Plan) -> impl Iterator<Item = Bounds2> {
    let runs = plan.runs.iter();
    runs.map(|run| run.rectangle(run.framed, (0.0, run.depth)))
}

/// The highest place under the island with its height; `also` are places that count too.
///
/// Between the levels the ground is flat over triangles: its highest point under a rectangle is a level in it, a corner, or
/// where the edge of a triangle crosses a side.
pub(super) fn highest(plan: &Plan, surface: &Surface, also: &[Point2]) -> (Point2, f64) {
    let mut best = (Point2::origin(), f64::NEG_INFINITY);
    let mut try_at = |place: Point2, z: f64| {
        if z > best.1 {
            best = (place, z);
        }
    };
    for area in footprints(plan) {
        for [a, b] in surface.edges() {
            for end in [a, b] {
                if holds(&area, end.xy()) {
                    try_at(end.xy(), end.z);
                }
            }
            for share in crossings(&area, a.xy(), b.xy()) {
                let at = a + (b - a) * share;
                if holds(&area, at.xy()) {
                    try_at(at.xy(), at.z);
                }
            }
        }
        for place in round(&area) {
            try_at(place, surface.at(place).z);
        }
    }
    for place in also {
        try_at(*place, surface.at(*place).z);
    }
    best
}

/// True inside an area and on its sides.
pub(super) fn holds(area: &Bounds2, at: Point2) -> bool {
    (0..2).all(|i| at[i] >= area.low[i] - 1e-6 && at[i] <= area.high[i] + 1e-6)
}

/// Where a straight piece crosses the lines of an area's sides, as shares of its length.
fn crossings(area: &Bounds2, a: Point2, b: Point2) -> impl Iterator<Item = f64> {
    let lines = [
        (0, area.low.x),
        (0, area.high.x),
        (1, area.low.y),
        (1, area.high.y),
    ];
    lines.into_iter().filter_map(move |(axis, at)| {
        let (from, to) = (a[axis] - at, b[axis] - at);
        (from * to < 0.0).then(|| from / (from - to))
    })
}

/// Places along the sides of an area, its corners among them.
fn round(area: &Bounds2) -> Vec<Point2> {
    let (low, high) = (area.low, area.high);
    let corners = [
        low,
        Point2::new(high.x, low.y),
        high,
        Point2::new(low.x, high.y),
    ];
    let next = corners.iter().cycle().skip(1);
    let mut places = Vec::new();
    for (a, b) in corners.iter().zip(next) {
        let steps = ((b - a).norm() / STEP).ceil().clamp(1.0, 10_000.0);
        places.extend((0..(steps as u32)).map(|k| a + (b - a) * (f64::from(k) / steps)));
    }
    places
}
