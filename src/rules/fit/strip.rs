//! The strips of a plate with square cuts: how wide its material is, across and up.

use crate::geometry::{Point2, Region, Solid};
use crate::parts::Part;
use crate::plan::Face;

/// A stretch of material in a face's coordinates, millimetres, between two opposite edges.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Strip {
    /// From edge to edge.
    pub width: f64,
    /// Left and right end.
    pub s: (f64, f64),
    /// Lower and upper end.
    pub z: (f64, f64),
}

/// The strips of a flat part on a face: first those measured across, then those measured up. Its cuts are square to each other.
pub(super) fn strips(face: &Face, part: &Part, solid: &Solid) -> [Vec<Strip>; 2] {
    let Solid::Extrusion(plate) = solid else {
        return [Vec::new(), Vec::new()];
    };
    let at = part.placement.translation;
    let s0 = (Point2::new(at.x, at.y) - face.start).dot(&face.along);
    let across = scan(&plate.profile, |p| (p.x + s0, p.y + at.z));
    let up = scan(&plate.profile, |p| (p.y + at.z, p.x + s0));
    let strip = |(a, b): (Stretch, Stretch), turned: bool| Strip {
        width: a.1 - a.0,
        s: if turned { b } else { a },
        z: if turned { a } else { b },
    };
    [
        across.into_iter().map(|f| strip(f, false)).collect(),
        up.into_iter().map(|f| strip(f, true)).collect(),
    ]
}

type Stretch = (f64, f64);

/// From edge to edge along the first coordinate, with the stretch of the second over which it is so.
fn scan(region: &Region, turned: impl Fn(Point2) -> (f64, f64)) -> Vec<(Stretch, Stretch)> {
    let edges: Vec<_> = std::iter::once(&region.outer)
        .chain(&region.holes)
        .flat_map(|o| {
            o.segments()
                .map(|e| (turned(e.from), turned(e.to)))
                .collect::<Vec<_>>()
        })
        .collect();
    let mut bands: Vec<f64> = edges.iter().map(|e| e.0.1).collect();
    bands.sort_by(f64::total_cmp);
    bands.dedup_by(|a, b| (*a - *b).abs() < 1e-6);
    let mut found: Vec<(Stretch, Stretch)> = Vec::new();
    for band in bands.windows(2) {
        let middle = f64::midpoint(band[0], band[1]);
        let crosses = |e: &&((f64, f64), (f64, f64))| (e.0.1 < middle) != (e.1.1 < middle);
        let mut at: Vec<f64> = edges
            .iter()
            .filter(crosses)
            .map(|e| f64::midpoint(e.0.0, e.1.0))
            .collect();
        at.sort_by(f64::total_cmp);
        for pair in at.chunks_exact(2) {
            let same = |f: &&mut (Stretch, Stretch)| {
                let ends = (f.0.0 - pair[0]).abs() < 1e-6 && (f.0.1 - pair[1]).abs() < 1e-6;
                ends && (f.1.1 - band[0]).abs() < 1e-6
            };
            if let Some(before) = found.iter_mut().find(same) {
                before.1.1 = band[1];
            } else {
                found.push(((pair[0], pair[1]), (band[0], band[1])));
            }
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Outline;

    #[test]
    fn a_plate_with_a_notch_has_the_strips_worked_on_paper() {
        // 100 × 60 with a notch of 70 × 20 at its upper left: 30 wide from 40 to 60, 100 wide below; up it is 40 high to
        // 70 and 60 beyond.
        let points = [
            (0.0, 0.0),
            (100.0, 0.0),
            (100.0, 60.0),
            (70.0, 60.0),
            (70.0, 40.0),
            (0.0, 40.0),
        ];
        let points = points.map(|(x, y)| Point2::new(x, y));
        let region = Region::solid(Outline::polygon(&points));
        let across = scan(&region, |p| (p.x, p.y));
        assert_eq!(
            across,
            [((0.0, 100.0), (0.0, 40.0)), ((70.0, 100.0), (40.0, 60.0))]
        );
        let up = scan(&region, |p| (p.y, p.x));
        assert_eq!(
            up,
            [((0.0, 40.0), (0.0, 70.0)), ((0.0, 60.0), (70.0, 100.0))]
        );
    }

    #[test]
    fn a_hole_parts_a_plate_into_strips() {
        let region = Region {
            outer: Outline::rectangle(0.0, 0.0, 50.0, 50.0),
            holes: vec![Outline::rectangle(10.0, 20.0, 45.0, 30.0)],
        };
        let across = scan(&region, |p| (p.x, p.y));
        assert!(across.contains(&((45.0, 50.0), (20.0, 30.0))), "{across:?}");
        assert!(across.contains(&((0.0, 10.0), (20.0, 30.0))), "{across:?}");
    }
}
