//! What every cut has to hold, wherever the solid was built.

use crate::geometry::{Faceted, Placement, Point3, Region, Unsound, Vector3};
use std::f64::consts::PI;

/// Panics unless both halves of a solid that is cut at a level are sound, have its volume together, and share the
/// region between them.
pub(crate) fn prove_cut(solid: &Faceted, level: f64) {
    let upside_down = Placement::rotation(Vector3::x() * PI);
    let lower = solid.cut_at(level);
    let upper = solid.moved(&upside_down).cut_at(-level);
    for half in [&lower.kept, &upper.kept] {
        if !half.triangles.is_empty() {
            // Beside the rim a triangle may be slim: it is cut where it is cut.
            let fault = half
                .check()
                .err()
                .filter(|f| !matches!(f, Unsound::Sliver(_)));
            assert_eq!(fault, None, "a half at {level}");
        }
    }
    let (whole, halves) = (solid.volume(), lower.kept.volume() + upper.kept.volume());
    // A cut a hair beside the plane is brought up to it: what lies between is moved by as much.
    let near = |p: &Point3| (p.z - level).abs() < 1e-3;
    let moved = if solid.points.iter().any(near) {
        5e-3 * surface(solid)
    } else {
        0.0
    };
    let slack = 1e-7 * whole + moved;
    assert!(
        (whole - halves).abs() <= slack,
        "{halves} of {whole} at {level}"
    );
    let lid = cap_area(&lower.kept, level);
    let region: f64 = lower.region.iter().map(Region::area).sum();
    let rim: f64 = lower.region.iter().map(|r| r.outer.perimeter()).sum();
    let extent = solid.bounds().map_or(0.0, |b| (b.high - b.low).norm());
    // What touches the plane with an edge leaves a hair that is no region.
    let slack = 1e-3 * rim + 0.02 * extent;
    assert!(
        (lid - region).abs() <= slack,
        "{region} mm² under a cap of {lid} at {level}"
    );
}

/// Cuts a solid at levels that say something: through its middle, at its head, and right through one of its corners.
pub(crate) fn prove_cuts(solid: &Faceted) {
    let Some(bounds) = solid.bounds() else { return };
    let (low, high) = (bounds.low.z, bounds.high.z);
    let corner = solid.points[solid.points.len() / 3].z;
    for level in [f64::midpoint(low, high), high, corner + 3e-4] {
        prove_cut(solid, level);
    }
}

fn surface(solid: &Faceted) -> f64 {
    let sides = solid.triangles.iter().map(|t| solid.corners(t));
    sides
        .map(|[a, b, c]| (b - a).cross(&(c - a)).norm() / 2.0)
        .sum()
}

/// The area of the triangles in the plane that look up.
fn cap_area(half: &Faceted, level: f64) -> f64 {
    let flat = half.triangles.iter().map(|t| half.corners(t));
    let flat = flat.filter(|c| c.iter().all(|p| p.z == level));
    flat.map(|[a, b, c]| (b - a).cross(&(c - a)).z / 2.0).sum()
}
