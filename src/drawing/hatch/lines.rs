//! Parallel lines clipped to a region.

use crate::geometry::{Outline, Point2, Region, Vector2};

/// No region gets more lines of one pattern: they are drawn wider apart instead.
const MOST: f64 = 240.0;

/// Pieces shorter than this are left out, millimetres.
const SHORTEST: f64 = 0.15;

/// Parallel lines: their direction, and how far they are apart.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Ruling {
    /// Counter-clockwise from x, degrees.
    pub angle: f64,
    /// From one to the next, millimetres.
    pub apart: f64,
    /// Where one of them passes the origin of the sheet, millimetres across.
    pub shift: f64,
}

/// The pieces of parallel lines inside a region of straight sides.
pub(super) fn ruled(region: &Region, ruling: Ruling) -> Vec<[Point2; 2]> {
    let (sin, cos) = ruling.angle.to_radians().sin_cos();
    let (along, across) = (Vector2::new(cos, sin), Vector2::new(-sin, cos));
    let sides: Vec<[Point2; 2]> = sides(region).collect();
    let offsets = sides.iter().map(|s| s[0].coords.dot(&across));
    let (low, high) = offsets.fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), o| {
        (l.min(o), h.max(o))
    });
    let wide = high - low;
    if !(wide.is_finite() && ruling.apart > 0.0) {
        return Vec::new();
    }
    let apart = ruling.apart * (wide / ruling.apart / MOST).ceil().max(1.0);
    let first = ((low - ruling.shift) / apart).ceil();
    let count = ((high - ruling.shift) / apart - first).floor().max(-1.0) as i64 + 1;
    let mut pieces = Vec::new();
    for i in 0..count {
        let offset = ruling.shift + (first + i as f64) * apart;
        for [from, to] in crossed(&sides, along, across, offset) {
            if to - from > SHORTEST {
                let at = |t: f64| Point2::from(along * t + across * offset);
                pieces.push([at(from), at(to)]);
            }
        }
    }
    pieces
}

/// Where a line lies inside, from and to along it. A corner on the line counts as lying above it.
fn crossed(sides: &[[Point2; 2]], along: Vector2, across: Vector2, offset: f64) -> Vec<[f64; 2]> {
    let mut cuts: Vec<f64> = sides
        .iter()
        .filter_map(|[a, b]| {
            let (p, q) = (
                a.coords.dot(&across) - offset,
                b.coords.dot(&across) - offset,
            );
            ((p < 0.0) != (q < 0.0)).then(|| (a + (b - a) * (p / (p - q))).coords.dot(&along))
        })
        .collect();
    cuts.sort_by(f64::total_cmp);
    cuts.chunks_exact(2).map(|c| [c[0], c[1]]).collect()
}

/// The straight sides of a region, those of its holes among them.
pub(super) fn sides(region: &Region) -> impl Iterator<Item = [Point2; 2]> + '_ {
    let outlines = std::iter::once(&region.outer).chain(&region.holes);
    outlines.flat_map(Outline::segments).map(|s| [s.from, s.to])
}
