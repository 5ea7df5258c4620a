//! Flat pieces in the coordinates of their face, as polygons.

use super::tally::Tally;
use crate::geometry::{Outline, Point2, Region, Solid};
use crate::parts::{Part, PartKind};

/// The region of every board of a face, in the face's coordinates (s, z).
pub(super) fn boards(tally: &Tally, face: usize) -> Vec<Region> {
    let on_face = tally.on_face(PartKind::Board, face);
    on_face.filter_map(|p| region(tally, face, p)).collect()
}

fn region(tally: &Tally, face: usize, part: &Part) -> Option<Region> {
    let Solid::Extrusion(plate) = tally.assembly.solid(part) else {
        return None;
    };
    let face = tally.plan.faces.get(face)?;
    let at = part.placement.translation.vector;
    let s = (Point2::new(at.x, at.y) - face.start).dot(&face.along);
    let motion = nalgebra::Isometry2::translation(s, at.z);
    let moved = |o: &Outline| o.moved(&motion);
    Some(Region {
        outer: moved(&plate.profile.outer),
        holes: plate.profile.holes.iter().map(moved).collect(),
    })
}

/// A side of a region that runs along an axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Edge {
    /// Where it stands across.
    pub at: f64,
    /// From where to where along the axis.
    pub span: (f64, f64),
    /// True when the region lies on the side of the larger coordinate.
    pub inside_above: bool,
}

/// The sides of a region that run along an axis, those of its holes among them.
pub(super) fn edges(region: &Region, axis: usize) -> Vec<Edge> {
    let outer = edges_of(&region.outer, axis, true);
    let holes = region.holes.iter().map(|h| edges_of(h, axis, false));
    outer.into_iter().chain(holes.flatten()).collect()
}

fn edges_of(outline: &Outline, axis: usize, solid: bool) -> Vec<Edge> {
    let across = 1 - axis;
    outline
        .segments()
        .filter(|s| s.bulge == 0.0 && (s.to[across] - s.from[across]).abs() < 1e-6)
        .map(|s| {
            let forward = s.to[axis] > s.from[axis];
            Edge {
                at: s.from[across],
                span: (s.from[axis].min(s.to[axis]), s.from[axis].max(s.to[axis])),
                // Counter-clockwise the inside is on the left: above what runs along x, before what runs along y.
                inside_above: (forward == (axis == 0)) == solid,
            }
        })
        .collect()
}

/// The stretches of a line along an axis that lie in a polygon region, rising: the line stands at `at` across.
///
/// A line that runs along a side sees what is beyond it on the side of the larger coordinate.
pub(super) fn stretches(region: &Region, axis: usize, at: f64) -> Vec<(f64, f64)> {
    let across = 1 - axis;
    let outlines = std::iter::once(&region.outer).chain(&region.holes);
    let mut cuts: Vec<f64> = outlines
        .flat_map(Outline::segments)
        .filter(|s| (s.from[across] <= at) != (s.to[across] <= at))
        .map(|s| {
            let share = (at - s.from[across]) / (s.to[across] - s.from[across]);
            s.from[axis] + (s.to[axis] - s.from[axis]) * share
        })
        .collect();
    cuts.sort_by(f64::total_cmp);
    cuts.chunks_exact(2).map(|c| (c[0], c[1])).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_is_broken_by_a_hole_and_a_notch() {
        let ring = Region {
            outer: Outline::rectangle(0.0, 0.0, 100.0, 50.0),
            holes: vec![Outline::rectangle(20.0, 10.0, 40.0, 30.0)],
        };
        assert_eq!(stretches(&ring, 0, 20.0), [(0.0, 20.0), (40.0, 100.0)]);
        assert_eq!(stretches(&ring, 1, 30.0), [(0.0, 10.0), (30.0, 50.0)]);
        assert_eq!(stretches(&ring, 0, 40.0), [(0.0, 100.0)]);
        assert!(stretches(&ring, 0, 60.0).is_empty());
    }
}
