//! The strips of slab left beside cutouts.

use super::{LEAST_RAIL, spell};
use crate::design::Design;
use crate::diagnostics::{Finding, Place};
use crate::geometry::{Outline, Point2};
use crate::plan::counter::CounterCutout;

/// Chords for measuring distances between outlines, millimetres.
const MEASURED: f64 = 0.05;

/// Every closed cutout keeps a strip of slab to the line that the slab rests on, and to cutouts of other runs.
pub(in crate::plan::counter) fn rails(
    design: &Design,
    rest: &Outline,
    cutouts: &[CounterCutout],
    findings: &mut Vec<Finding>,
) {
    let rest = rest.flatten(MEASURED);
    let flat: Vec<_> = cutouts
        .iter()
        .map(|c| c.outline.flatten(MEASURED))
        .collect();
    for (i, c) in cutouts.iter().enumerate() {
        let a = &design.appliances[c.appliance];
        let inside = c.open || flat[i].iter().all(|p| contains(&rest, *p));
        if !c.open && (!inside || distance(&flat[i], &rest) < LEAST_RAIL - 1e-6) {
            findings.push(rail(
                design,
                &a.station.place,
                &format!("beside the cutout of '{}'", a.name),
            ));
        }
        for (j, other) in cutouts.iter().enumerate().skip(i + 1) {
            let apart = distance(&flat[i], &flat[j]) >= LEAST_RAIL - 1e-6;
            if c.run == other.run
                || (apart && !contains(&flat[i], flat[j][0]) && !contains(&flat[j], flat[i][0]))
            {
                continue;
            }
            let b = &design.appliances[other.appliance];
            findings.push(rail(
                design,
                &b.station.place,
                &format!("between the cutouts of '{}' and '{}'", a.name, b.name),
            ));
        }
    }
}

fn rail(design: &Design, place: &Place, between: &str) -> Finding {
    let least = spell(design, LEAST_RAIL);
    let mut finding = Finding::error(
        "plan-cutout-rail",
        place,
        format!("less than {least} of slab is left {between}"),
    )
    .hint("move the cutout, or make the run longer or deeper");
    finding.limit = format!("{least} of slab beside a cutout");
    "common practice".clone_into(&mut finding.source);
    finding
}

/// The least distance between two polygons that do not cross.
fn distance(a: &[Point2], b: &[Point2]) -> f64 {
    let one_way = |points: &[Point2], ring: &[Point2]| {
        points
            .iter()
            .flat_map(|p| (0..ring.len()).map(move |i| (*p, i)))
            .map(|(p, i)| {
                let (from, to) = (ring[i], ring[(i + 1) % ring.len()]);
                let side = to - from;
                let along = ((p - from).dot(&side) / side.norm_squared()).clamp(0.0, 1.0);
                (p - (from + side * along)).norm()
            })
            .fold(f64::INFINITY, f64::min)
    };
    one_way(a, b).min(one_way(b, a))
}

/// True when a point lies inside a polygon, by crossings.
fn contains(ring: &[Point2], p: Point2) -> bool {
    let crosses = |i: usize| {
        let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
        (a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x)
    };
    (0..ring.len()).filter(|i| crosses(*i)).count() % 2 == 1
}
