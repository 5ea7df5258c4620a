//! How the boards of one face are laid out.

use super::joints::Stretch;
use crate::geometry::{Outline, Region};
use crate::plan::{Courses, FaceOpening, Steel};

/// A strip narrower than this is not cut, millimetres; the coat fills it.
const SLIVER: f64 = 1.0;

/// One piece cut from one sheet, before openings are cut out of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Sheet {
    /// Number of its course, from the bottom.
    pub course: usize,
    /// Left and right edge.
    pub s: (f64, f64),
    /// Lower and upper edge.
    pub z: (f64, f64),
}

impl Sheet {
    /// What is left of it when the openings are cut out: several pieces when it falls apart.
    pub fn cut(&self, openings: &[FaceOpening]) -> Vec<Region> {
        let whole = Outline::rectangle(self.s.0, self.z.0, self.s.1, self.z.1);
        let near = openings
            .iter()
            .filter(|o| o.s0 < self.s.1 && self.s.0 < o.s1 && o.z0 < self.z.1 && self.z.0 < o.z1);
        let holes: Vec<_> = near.map(FaceOpening::outline).collect();
        let mut pieces = Region::solid(whole).minus(&holes);
        pieces.retain(|p| {
            let b = p.outer.bounds();
            b.width() >= SLIVER && b.height() >= SLIVER
        });
        pieces
    }
}

/// Lays out the sheets of one face, course by course from the bottom, each from left to right.
///
/// Every vertical edge that is not an end of the layer or the side of an opening lies over the middle of an upright,
/// half a gap away from it, and no sheet is larger than those bought.
pub(super) fn sheets(
    ends: (f64, f64),
    openings: &[FaceOpening],
    steel: &[Steel],
    courses: &Courses,
) -> Vec<Sheet> {
    let mut sheets = Vec::new();
    let mut below: Vec<f64> = Vec::new();
    for (course, z) in courses.rows().enumerate() {
        let mut joints = Vec::new();
        for s in stretches(ends, z, openings) {
            let stretch = Stretch {
                s,
                z,
                openings,
                steel,
                below: &below,
                longest: courses.sheet_along,
                gap: courses.gap,
            };
            let found = stretch.joints();
            sheets.extend(between(s, &found, courses.gap).map(|s| Sheet { course, s, z }));
            joints.extend(found);
        }
        below = joints;
    }
    sheets
}

/// The parts of a course between openings that cut right through it.
fn stretches(ends: (f64, f64), z: (f64, f64), openings: &[FaceOpening]) -> Vec<(f64, f64)> {
    let mut through: Vec<_> = openings
        .iter()
        .filter(|o| o.z0 < z.0 + SLIVER && z.1 - SLIVER < o.z1)
        .collect();
    through.sort_by(|a, b| a.s0.total_cmp(&b.s0));
    let mut parts = Vec::new();
    let mut from = ends.0;
    for o in through {
        parts.push((from, o.s0));
        from = from.max(o.s1);
    }
    parts.push((from, ends.1));
    parts.retain(|p| p.1 - p.0 >= SLIVER);
    parts
}

/// The pieces between the joints of a stretch, half a gap off at each joint.
fn between(s: (f64, f64), joints: &[f64], gap: f64) -> impl Iterator<Item = (f64, f64)> + use<> {
    let half = gap / 2.0;
    let lefts: Vec<f64> = std::iter::once(s.0)
        .chain(joints.iter().map(|j| j + half))
        .collect();
    let rights: Vec<f64> = joints.iter().map(|j| j - half).chain([s.1]).collect();
    lefts.into_iter().zip(rights)
}
