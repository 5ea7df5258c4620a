//! The cut surface: from the sides of its rim to triangles and to clean polygons.

use crate::geometry::faceting::fill;
use crate::geometry::overlay::{Rule, overlay};
use crate::geometry::{Outline, Point2, Region};
use std::collections::BTreeMap;

/// A corner that stands no farther than this off the line between its neighbours is none, millimetres: it comes from
/// the triangles that were cut.
const IN_LINE: f64 = 2e-4;

/// Nothing is built thinner, millimetres.
const THINNEST: f64 = 0.01;

/// Sides that run to and fro between two corners enclose nothing.
pub(super) fn without_doubles(mut rim: Vec<[u32; 2]>) -> Vec<[u32; 2]> {
    rim.sort_unstable();
    let mut back: Vec<[u32; 2]> = rim.iter().map(|[a, b]| [*b, *a]).collect();
    back.sort_unstable();
    rim.retain(|side| back.binary_search(side).is_err());
    rim
}

/// Triangles that fill the rim, counter-clockwise from above; none when rounding makes its sides cross.
pub(super) fn triangles(rim: &[[u32; 2]], at: impl Fn(u32) -> Point2) -> Vec<[u32; 3]> {
    let mut corners: Vec<u32> = rim.iter().flatten().copied().collect();
    corners.sort_unstable();
    corners.dedup();
    let points: Vec<[f64; 2]> = corners.iter().map(|c| at(*c)).map(|p| [p.x, p.y]).collect();
    let number = |corner: u32| corners.binary_search(&corner).unwrap_or(0);
    let sides: Vec<_> = rim.iter().map(|side| side.map(number)).collect();
    let filled = fill(&points, &sides).unwrap_or_default();
    filled.into_iter().map(|t| t.map(|i| corners[i])).collect()
}

/// The region as polygons with holes, corners in a straight line left out.
pub(super) fn region(rim: &[[u32; 2]], at: impl Fn(u32) -> Point2) -> Vec<Region> {
    let rings: Vec<Vec<Point2>> = rings(rim)
        .into_iter()
        .map(|ring| ring.into_iter().map(&at).collect())
        .collect();
    let pieces = overlay(&rings, &[], Rule::Whole);
    pieces
        .into_iter()
        .filter_map(|piece| clean(&piece))
        .collect()
}

/// Sides chained to rings, starting from the lowest numbers.
fn rings(rim: &[[u32; 2]]) -> Vec<Vec<u32>> {
    let mut ways: BTreeMap<u32, Vec<u32>> = BTreeMap::new();
    for [from, to] in rim {
        ways.entry(*from).or_default().push(*to);
    }
    let mut rings = Vec::new();
    while let Some(&start) = ways.keys().next() {
        let mut ring = Vec::new();
        let mut at = start;
        while let Some(next) = step(&mut ways, at) {
            ring.push(at);
            at = next;
        }
        rings.push(ring);
    }
    rings
}

/// Takes one way out of a corner.
fn step(ways: &mut BTreeMap<u32, Vec<u32>>, from: u32) -> Option<u32> {
    let left = ways.get_mut(&from)?;
    let next = left.pop();
    if left.is_empty() {
        ways.remove(&from);
    }
    next
}

/// The region without corners in line; `None` when it is thinner than anything that is built: what touches the plane
/// with an edge.
fn clean(region: &Region) -> Option<Region> {
    if region.area() < THINNEST * region.outer.perimeter() / 2.0 {
        return None;
    }
    Some(Region {
        outer: straightened(&region.outer)?,
        holes: region.holes.iter().filter_map(straightened).collect(),
    })
}

/// An outline without the corners in a straight line; `None` when nothing is left of it.
fn straightened(outline: &Outline) -> Option<Outline> {
    let mut corners: Vec<Point2> = outline.vertices().iter().map(|v| v.at).collect();
    let mut at = 0;
    while at < corners.len() && corners.len() > 2 {
        let n = corners.len();
        let (before, here, after) = (
            corners[(at + n - 1) % n],
            corners[at],
            corners[(at + 1) % n],
        );
        let chord = after - before;
        let off = chord.perp(&(here - before)).abs() / chord.norm().max(f64::MIN_POSITIVE);
        if off < IN_LINE && chord.dot(&(here - before)) >= 0.0 {
            corners.remove(at);
            at = at.saturating_sub(1);
        } else {
            at += 1;
        }
    }
    (corners.len() > 2).then(|| Outline::polygon(&corners))
}
