//! Which details show what a section cuts.

use super::list::{Subject, details};
use super::places::OTHER_OVERHANG;
use crate::design::Side;
use crate::plan::{Band, Face, FaceOpening, Plan, RunPlan, SideKind};

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
                let holed = |o: &FaceOpening| self.passes(f, o.s0, o.s1) && o.z0 <= z && o.z1 >= z;
                there && self.passes(f, 0.0, f.length) && !f.openings.iter().any(holed)
            })
        };
        let face = clad(Side::Seating).or_else(|| clad(Side::Working))?;
        Some(self.v(face))
    }

    /// The lower edge of the tile band.
    fn tile(&self) -> Option<(f64, f64)> {
        let z = Band::of(&self.plan.design, &self.plan.levels)?.foot;
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

#[cfg(test)]
mod tests {
    use super::*;

    fn garden() -> Plan {
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/params/garden-corner.yaml");
        let text = std::fs::read_to_string(path).unwrap();
        crate::plan::lay_out(crate::design::from_text(&text).unwrap()).unwrap()
    }

    /// Titles and places of what is called, inches.
    fn called(plan: &Plan, inches: f64) -> Vec<(String, f64, f64)> {
        let run = plan.design.runs.iter().position(|r| r.name.value == "cook");
        let titles = details(plan);
        let called = cut_at(plan, run.unwrap(), inches * 25.4).into_iter();
        called
            .map(|c| {
                let title = titles[c.number - 1].title.clone();
                (title, c.at.0 / 25.4, c.at.1 / 25.4)
            })
            .collect()
    }

    fn expect(found: &[(String, f64, f64)], wanted: &[(&str, f64, f64)]) {
        assert_eq!(found.len(), wanted.len(), "{found:?}");
        for ((title, v, z), (start, at, up)) in found.iter().zip(wanted) {
            assert!(title.starts_with(start), "{title} for {start}");
            assert!(
                (v - at).abs() < 1e-6 && (z - up).abs() < 1e-6,
                "{title}: {v} {z}"
            );
        }
    }

    #[test]
    fn a_plain_bay_shows_both_edges_the_tile_and_the_foot() {
        // Frame 30 in deep; 7/8 in of cladding and 2 and 10 in of overhang; slab from 34 to 36 in; the frame ends at 33 1/2 in,
        // below it tiles of 4 1/4 in and a joint of 3/16 in.
        let plan = garden();
        let wanted = [
            ("Counter edge, working", -2.875, 35.0),
            ("Tile band", 30.0, 29.0625),
            ("Counter edge, seating", 40.875, 35.0),
            ("Base", 30.0, 2.0),
        ];
        expect(&called(&plan, 7.75), &wanted);
    }

    #[test]
    fn where_the_front_is_open_the_working_edge_is_none_and_the_head_of_the_doors_is_met() {
        // Doors 18 in high over a sill of 5 in, under the grill.
        let found = called(&garden(), 28.0);
        let titles: Vec<&str> = found.iter().map(|f| f.0.as_str()).collect();
        assert!(
            !titles
                .iter()
                .any(|t| t.starts_with("Counter edge, working")),
            "{titles:?}"
        );
        let head = found.iter().find(|f| f.0.starts_with("Head")).unwrap();
        assert!(
            head.1.abs() < 1e-6 && (head.2 - 23.0).abs() < 1e-6,
            "{head:?}"
        );
    }
}
