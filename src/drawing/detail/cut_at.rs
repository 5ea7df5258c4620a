//! Which details show what a section cuts.

use super::list::{Subject, details};
use super::places::OTHER_OVERHANG;
use crate::design::Side;
use crate::plan::{Face, Plan, RunPlan, SideKind};

/// A detail and where a section shows the same thing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Called {
    /// The detail's number.
    pub number: usize,
    /// Where its middle lies: from the working face of the frame towards the seating side, and above the datum, millimetres.
    pub at: (f64, f64),
    /// How far round it the detail shows, millimetres.
    pub reach: f64,
}

/// The details that show what a plane across a run at `u` goes through, each once, where they show it.
pub fn cut_at(plan: &Plan, run: usize, u: f64) -> Vec<Called> {
    let Some(own) = plan.runs.get(run) else {
        return Vec::new();
    };
    let place = Plane { plan, own, run, u };
    let all = details(plan).into_iter();
    let called = all.filter_map(|detail| {
        let (at, reach) = place.of(&detail.subject)?;
        let number = detail.number;
        Some(Called { number, at, reach })
    });
    called.collect()
}

/// Round an edge of the counter.
const EDGE: f64 = 65.0;
/// Round the foot of a wall.
const FOOT: f64 = 60.0;
/// Round the lower edge of the tile, and the head of an opening.
const SMALL: f64 = 40.0;

/// The plane of a section.
struct Plane<'a> {
    plan: &'a Plan,
    own: &'a RunPlan,
    run: usize,
    u: f64,
}

impl Plane<'_> {
    /// Where it meets what a detail shows, and how far round that the detail reaches.
    fn of(&self, subject: &Subject) -> Option<((f64, f64), f64)> {
        let levels = &self.plan.levels;
        match subject {
            Subject::Edge(_, side) => {
                let v = self.edge(*side)?;
                let z = f64::midpoint(levels.slab_bottom, levels.counter_top);
                Some(((v, z), EDGE))
            }
            Subject::Base(_) => Some(((self.clad(0.0)?, levels.frame_bottom), FOOT)),
            Subject::Tile(_) => self.tile().map(|at| (at, SMALL)),
            Subject::Head(face, opening) => {
                let face = self.plan.faces.get(*face).filter(|f| f.run == self.run)?;
                let hole = face.openings.get(*opening)?;
                let passed = self.passes(face, hole.s0, hole.s1);
                passed.then(|| ((self.v(face), hole.z1), SMALL))
            }
            Subject::Cutout(number) => {
                let hole = self.plan.cutouts.get(*number)?;
                let passed = hole.run == self.run && self.u > hole.u0 && self.u < hole.u1;
                passed.then_some(((hole.v1, levels.slab_bottom), FOOT))
            }
            // Seen from above or along the face.
            Subject::Track(_)
            | Subject::Fold(..)
            | Subject::Jamb(..)
            | Subject::Inward(_)
            | Subject::Outward(_) => None,
        }
    }

    /// The edge of the counter that is made as a detail shows it; on the working side before the seating side.
    fn edge(&self, shown: usize) -> Option<f64> {
        let shown = self.plan.counter.sides.get(shown)?;
        let (near, far) = self.plan.counter_across(self.run);
        let alike = |side: Side| {
            let mut own = self.plan.counter.sides.iter();
            own.any(|s| {
                let face = self.plan.faces.get(s.face);
                face.is_some_and(|f| f.run == self.run && f.side == side)
                    && s.kind == SideKind::Exposed
                    && s.dropped == shown.dropped
                    && (s.overhang - shown.overhang).abs() <= OTHER_OVERHANG
                    && {
                        let [a, b] = [s.start, s.end].map(|p| self.own.local(p).x);
                        self.u > a.min(b) && self.u < a.max(b)
                    }
            })
        };
        let mut holes = self.plan.cutouts.iter();
        let open = holes.any(|c| c.open && c.run == self.run && self.u > c.u0 && self.u < c.u1);
        if alike(Side::Working) && !open {
            return Some(near);
        }
        alike(Side::Seating).then_some(far)
    }

    /// Where a long face of the run is clad at a height: on the seating side first, where notes are few.
    fn clad(&self, z: f64) -> Option<f64> {
        let clad = |side: Side| {
            let mut own = self.plan.faces.iter();
            own.find(|f| {
                let there = f.run == self.run && f.side == side && !f.wall;
                let holed = |o: &crate::plan::FaceOpening| {
                    self.passes(f, o.s0, o.s1) && o.z0 <= z && o.z1 >= z
                };
                there && self.passes(f, 0.0, f.length) && !f.openings.iter().any(holed)
            })
        };
        let face = clad(Side::Seating).or_else(|| clad(Side::Working))?;
        Some(self.v(face))
    }

    /// The lower edge of the tile band.
    fn tile(&self) -> Option<(f64, f64)> {
        let band = self.plan.design.tile_band.as_ref()?;
        let z = self.plan.levels.slab_bottom - band.height.value.mm();
        Some((self.clad(z)?, z))
    }

    /// True where the plane lies between two places along a face.
    fn passes(&self, face: &Face, s0: f64, s1: f64) -> bool {
        let [a, b] = [s0, s1].map(|s| self.own.local(face.point(s, 0.0)).x);
        self.u > a.min(b) && self.u < a.max(b)
    }

    fn v(&self, face: &Face) -> f64 {
        self.own.local(face.point(0.0, 0.0)).y
    }
}
