//! Where leaders may end: points well inside what they speak of.

use super::content::{Extra, Target};
use crate::drawing::hidden::Line;
use crate::drawing::section::CutView;
use crate::geometry::{Outline, Point2, Region, distance};
use crate::parts::Part;

/// Lines across a region on which points are looked for, each way.
const LINES: u32 = 7;
/// No more points than these are offered.
const MOST: usize = 12;
/// A foot keeps so far from wires, millimetres built.
const WIRE: f64 = 4.0;
/// Points whose room is less than this share of the roomiest one's are not offered.
const ROOMY: f64 = 0.6;

/// The points that a note may lead to, the best first, and the part that they lie on; `None` when there is none.
pub(in crate::drawing) fn of<'a>(
    target: &Target,
    cut: &CutView,
    parts: &'a [Part],
) -> Option<(Vec<Point2>, Option<&'a Part>)> {
    let (kind, section) = match target {
        Target::At(points) => return (!points.is_empty()).then(|| (points.clone(), None)),
        Target::Whole => return Some((Vec::new(), None)),
        Target::Part(kind, section) => (*kind, *section),
    };
    let meant = |number: usize| {
        let part = parts.get(number)?;
        (part.kind == kind && part.section.starts_with(section)).then_some(part)
    };
    let pieces = cut.pieces.iter().filter_map(|p| Some((p, meant(p.part?)?)));
    let regions: Vec<&Region> = pieces.clone().flat_map(|(p, _)| &p.regions).collect();
    let points = roomiest(&regions);
    if let Some((_, part)) = pieces.clone().next().filter(|_| !points.is_empty()) {
        return Some((points, Some(part)));
    }
    let lines = cut.beyond.iter();
    let mut seen: Vec<_> = lines.filter_map(|l| Some((l, meant(l.of)?))).collect();
    let long = |line: &Line| (line.to - line.from).norm();
    seen.sort_by(|(a, _), (b, _)| long(b).total_cmp(&long(a)));
    let part = seen.first().map(|(_, part)| *part)?;
    let along = |share: f64| {
        seen.iter()
            .take(4)
            .map(move |(line, _)| line.from + (line.to - line.from) * share)
    };
    Some((
        [0.5, 0.3, 0.7].into_iter().flat_map(along).collect(),
        Some(part),
    ))
}

/// The points that lie on no wire and no bar; all of them where every one does.
pub(super) fn beside_wires(points: Vec<Point2>, extras: &[Extra]) -> Vec<Point2> {
    if points.len() < 2 {
        return points;
    }
    let is_clear = |p: &&Point2| {
        extras.iter().all(|extra| match extra {
            Extra::Wire(from, to, thick) => distance(**p, [*from, *to]) > thick / 2.0 + WIRE,
            Extra::Dot(at, thick) => (at - **p).norm() > thick / 2.0 + WIRE,
            _ => true,
        })
    };
    let clear: Vec<Point2> = points.iter().filter(is_clear).copied().collect();
    if clear.is_empty() { points } else { clear }
}

/// Points inside some regions, the one with the most room round it first.
fn roomiest(regions: &[&Region]) -> Vec<Point2> {
    let mut found: Vec<(f64, Point2)> = Vec::new();
    for region in regions {
        let b = region.outer.bounds();
        for k in 1..=LINES {
            let share = f64::from(k) / f64::from(LINES + 1);
            let level = b.low.y + b.height() * share;
            let upright = b.low.x + b.width() * share;
            found.extend(
                spans(region, 1, level)
                    .map(|x| Point2::new(x, level))
                    .map(|p| (room(region, p), p)),
            );
            found.extend(
                spans(region, 0, upright)
                    .map(|y| Point2::new(upright, y))
                    .map(|p| (room(region, p), p)),
            );
        }
    }
    let most = found.iter().map(|f| f.0).fold(0.0, f64::max);
    found.retain(|f| f.0 > ROOMY * most && f.0 > 0.05);
    found.sort_by(|a, b| b.0.total_cmp(&a.0));
    let step = found.len().div_ceil(MOST).max(1);
    found.into_iter().step_by(step).map(|f| f.1).collect()
}

fn outlines(region: &Region) -> impl Iterator<Item = &Outline> {
    std::iter::once(&region.outer).chain(&region.holes)
}

/// The middles of the stretches that a line along the other axis has inside a region.
fn spans(region: &Region, axis: usize, level: f64) -> impl Iterator<Item = f64> {
    let mut crossings: Vec<f64> = outlines(region)
        .flat_map(Outline::segments)
        .filter(|s| (s.from[axis] > level) != (s.to[axis] > level))
        .map(|s| {
            let share = (level - s.from[axis]) / (s.to[axis] - s.from[axis]);
            s.from[1 - axis] + (s.to[1 - axis] - s.from[1 - axis]) * share
        })
        .collect();
    crossings.sort_by(f64::total_cmp);
    let middles: Vec<f64> = crossings
        .chunks_exact(2)
        .map(|c| f64::midpoint(c[0], c[1]))
        .collect();
    middles.into_iter()
}

/// From a point to the nearest edge of its region.
fn room(region: &Region, at: Point2) -> f64 {
    let sides = outlines(region).flat_map(Outline::segments);
    let distances = sides.map(|s| distance(at, [s.from, s.to]));
    distances.fold(f64::INFINITY, f64::min)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_foot_is_in_the_middle_of_the_widest_place() {
        // A board 12 wide with a head 60 by 40 on it: the middle of the head has 20 round it.
        let board = Region::solid(Outline::polygon(&[
            Point2::new(0.0, 0.0),
            Point2::new(12.0, 0.0),
            Point2::new(12.0, 100.0),
            Point2::new(60.0, 100.0),
            Point2::new(60.0, 140.0),
            Point2::new(0.0, 140.0),
        ]));
        let feet = roomiest(&[&board]);
        assert!((feet[0].y - 120.0).abs() < 1e-9 && feet[0].x > 19.0 && feet[0].x < 41.0);
        assert!(roomiest(&[]).is_empty());
    }

    #[test]
    fn no_foot_stands_in_a_hole() {
        let ring = Region {
            outer: Outline::rectangle(0.0, 0.0, 100.0, 100.0),
            holes: vec![Outline::rectangle(20.0, 20.0, 80.0, 80.0)],
        };
        let feet = roomiest(&[&ring]);
        assert!(!feet.is_empty());
        let in_hole = |p: &Point2| p.x > 20.0 && p.x < 80.0 && p.y > 20.0 && p.y < 80.0;
        assert!(!feet.iter().any(in_hole));
    }
}
