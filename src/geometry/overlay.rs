//! Polygons laid over each other on a fixed grid, where the arithmetic is exact.

use super::{Outline, Point2, Region};
use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay::{IntOverlayOptions, Overlay, ShapeType};
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::core::solver::Solver;
use i_overlay::i_float::int::point::IntPoint;

/// Steps of the grid in a millimetre: a power of two, so that going to the grid and back costs no digit, and finer
/// than anything that is built.
const STEPS: f64 = 1_048_576.0;

/// Beyond this the grid has no room, millimetres: a thousand kilometres.
const FARTHEST: f64 = 1e9;

type Path = Vec<IntPoint<i64>>;

/// What is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Rule {
    /// What is left of the first rings without the second ones.
    Less,
    /// What they have in common.
    Common,
    /// All of the first rings, put in order: what a ring encloses, holes inside it, nothing twice.
    Whole,
}

/// Lays rings over each other; a ring encloses what lies to its left, so that holes run clockwise.
///
/// Pieces come from left to right, then upwards, and each begins at its leftmost, then lowest corner. A coordinate of
/// the result that is one of the input's is the same to the last bit.
pub(super) fn overlay(first: &[Vec<Point2>], second: &[Vec<Point2>], rule: Rule) -> Vec<Region> {
    let all = || first.iter().chain(second).flatten();
    let xs = coordinates(all().map(|p| p.x));
    let ys = coordinates(all().map(|p| p.y));
    let (subject, clip): (Vec<Path>, Vec<Path>) = (paths(first), paths(second));
    let mut overlay =
        Overlay::<i64>::new_custom(all().count(), IntOverlayOptions::ogc(), Solver::default());
    overlay.add_source(&subject, ShapeType::Subject);
    overlay.add_source(&clip, ShapeType::Clip);
    let rule = match rule {
        Rule::Less => OverlayRule::Difference,
        Rule::Common => OverlayRule::Intersect,
        Rule::Whole => OverlayRule::Subject,
    };
    let shapes = overlay.overlay(rule, FillRule::NonZero);
    let mut pieces: Vec<Region> = shapes
        .iter()
        .filter_map(|contours| {
            let mut outlines = contours.iter().map(|c| back(c, &xs, &ys));
            let outer = outlines.next()?;
            let mut holes: Vec<Outline> = outlines.collect();
            holes.sort_by(by_first_corner);
            Some(Region { outer, holes })
        })
        .collect();
    pieces.sort_by(|a, b| by_first_corner(&a.outer, &b.outer));
    pieces
}

/// Left to right, then upwards, by the first corner.
fn by_first_corner(a: &Outline, b: &Outline) -> std::cmp::Ordering {
    let key = |o: &Outline| {
        o.vertices()
            .first()
            .map_or((0.0, 0.0), |v| (v.at.x, v.at.y))
    };
    let (a, b) = (key(a), key(b));
    a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1))
}

fn to_grid(x: f64) -> i64 {
    (x.clamp(-FARTHEST, FARTHEST) * STEPS).round() as i64
}

fn paths(rings: &[Vec<Point2>]) -> Vec<Path> {
    let path = |ring: &Vec<Point2>| {
        let points = ring.iter();
        points
            .map(|p| IntPoint::new(to_grid(p.x), to_grid(p.y)))
            .collect()
    };
    rings.iter().map(path).collect()
}

/// The input's coordinates in one direction by their place on the grid, in rising order.
fn coordinates(values: impl Iterator<Item = f64>) -> Vec<(i64, f64)> {
    let mut all: Vec<(i64, f64)> = values.map(|v| (to_grid(v), v)).collect();
    all.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
    all.dedup_by_key(|c| c.0);
    all
}

/// A contour of the result in millimetres, counter-clockwise, its leftmost, then lowest corner first.
fn back(contour: &[IntPoint<i64>], xs: &[(i64, f64)], ys: &[(i64, f64)]) -> Outline {
    let points: Vec<Point2> = contour
        .iter()
        .map(|p| Point2::new(off_grid(p.x, xs), off_grid(p.y, ys)))
        .collect();
    let mut corners = Outline::polygon(&points).vertices().to_vec();
    let key = |i: &usize| (to_grid(corners[*i].at.x), to_grid(corners[*i].at.y));
    let first = (0..corners.len()).min_by_key(key).unwrap_or(0);
    corners.rotate_left(first);
    Outline::new(corners)
}

/// The input's coordinate at that place of the grid, or the place itself where lines of the input crossed.
fn off_grid(place: i64, known: &[(i64, f64)]) -> f64 {
    known
        .binary_search_by_key(&place, |c| c.0)
        .map_or(place as f64 / STEPS, |i| known[i].1)
}
