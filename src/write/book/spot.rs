//! Little pictures of where a finding is: the island from above, and the spots.

use crate::geometry::{Bounds3, Point2};
use crate::mesh::Instance;
use std::collections::BTreeMap;
use std::fmt::Write;

/// The longer side of the picture, in units of its own.
const LONG: f64 = 100.0;
/// Air round the island.
const AIR: f64 = 6.0;
/// A spot is never smaller, so that it is seen.
const LEAST: f64 = 5.0;

/// The picture as SVG; `None` where there is nothing to show.
pub(super) fn spot(outline: &[Point2], parts: &[&Instance]) -> Option<String> {
    let island = Bounds3::around(outline.iter().map(|p| nalgebra::Point3::new(p.x, p.y, 0.0)))?;
    // What belongs to one run is one spot: an L is not filled up to a rectangle.
    let mut by_run: BTreeMap<Option<usize>, Bounds3> = BTreeMap::new();
    for instance in parts {
        let own = instance.mesh.bounds().map(|b| b.corners());
        let own = own.and_then(|c| Bounds3::around(c.map(|c| instance.part.placement * c)));
        if let Some(own) = own {
            let spot = by_run.entry(instance.part.run).or_insert(own);
            *spot = spot.union(own);
        }
    }
    let boxes: Vec<Bounds3> = by_run.into_values().collect();
    let around = boxes.iter().copied().reduce(Bounds3::union)?;
    let all = island.union(around);
    let size = all.high - all.low;
    let scale = LONG / size.x.max(size.y).max(1.0);
    let at = |x: f64, y: f64| {
        (
            AIR + (x - all.low.x) * scale,
            AIR + (all.high.y - y) * scale,
        )
    };
    let points = outline.iter().fold(String::new(), |mut text, p| {
        let (x, y) = at(p.x, p.y);
        let _ = write!(text, "{x:.1},{y:.1} ");
        text
    });
    let spots = boxes.iter().fold(String::new(), |mut text, one| {
        let (x, y) = at(one.low.x, one.high.y);
        let wide = ((one.high.x - one.low.x) * scale).max(LEAST);
        let high = ((one.high.y - one.low.y) * scale).max(LEAST);
        let _ = write!(
            text,
            "<rect class=\"spot\" x=\"{x:.1}\" y=\"{y:.1}\" width=\"{wide:.1}\" height=\"{high:.1}\"/>"
        );
        text
    });
    Some(format!(
        "<svg viewBox=\"0 0 {:.0} {:.0}\" aria-hidden=\"true\"><polygon class=\"frame\" points=\"{}\"/>{spots}</svg>",
        size.x * scale + 2.0 * AIR,
        size.y * scale + 2.0 * AIR,
        points.trim_end(),
    ))
}
