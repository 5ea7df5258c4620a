//! The slab's volume by Cavalieri's principle: the areas of its slices added up.

use islandwright::geometry::{Outline, Slab, SlabEdge};

/// Slices in each stretch between two heights where the profile changes; the arcs' areas are smooth in between.
const SLICES: usize = 64;

/// The insets at which the profile crosses a height: the outer one, and in a turndown the inner one.
fn crossings(edge: &SlabEdge, z: f64) -> Vec<f64> {
    let mut found = Vec::new();
    for s in edge.stretches() {
        let (low, high) = (s.from.y.min(s.to.y), s.from.y.max(s.to.y));
        if z < low || z > high || low == high {
            continue;
        }
        // Stretches go steadily up or down, so halving finds the crossing.
        let (mut a, mut b) = (0.0, 1.0);
        for _ in 0..60 {
            let middle = f64::midpoint(a, b);
            if (s.at(middle).y - z) * (s.from.y - z) > 0.0 {
                a = middle;
            } else {
                b = middle;
            }
        }
        found.push(s.at(a).x);
    }
    found
}

/// The area of the slab at a height.
fn slice(slab: &Slab, z: f64) -> f64 {
    let found: Vec<_> = slab.edges.iter().map(|e| crossings(e, z)).collect();
    let outer: Vec<f64> = found
        .iter()
        .map(|c| c.first().copied().unwrap_or(0.0))
        .collect();
    let whole = slab.line(&outer).area();
    if z > 0.0 {
        return whole - slab.cutouts.iter().map(Outline::area).sum::<f64>();
    }
    let inner: Vec<f64> = found
        .iter()
        .map(|c| c.get(1).copied().unwrap_or(0.0))
        .collect();
    whole - slab.line(&inner).area()
}

/// The slab's volume from its slices, mm³.
pub fn volume(slab: &Slab) -> f64 {
    let mut heights: Vec<f64> = slab
        .edges
        .iter()
        .flat_map(|e| e.profile.iter().map(|p| p.z))
        .collect();
    heights.sort_by(f64::total_cmp);
    heights.dedup_by(|a, b| (*a - *b).abs() < 1e-9);
    let stretch = |w: &[f64]| {
        let (from, height) = (w[0], w[1] - w[0]);
        // Heights close up towards both ends, where an arc runs level.
        let at = |k: usize| {
            let turn = std::f64::consts::PI * k as f64 / SLICES as f64;
            from + height * (1.0 - turn.cos()) / 2.0
        };
        (0..SLICES)
            .map(|k| (at(k + 1) - at(k)) * slice(slab, f64::midpoint(at(k), at(k + 1))))
            .sum::<f64>()
    };
    heights.windows(2).map(stretch).sum()
}
