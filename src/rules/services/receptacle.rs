//! The receptacles of a design as its rules look at them: where they stand, how far from what.

use crate::design::Opening;
use crate::geometry::{Bounds3, Point3};
use crate::plan::{BodyOf, Face, Plan};
use crate::rules::{Answers, Bound, Limit, Subject};

/// One receptacle in its face.
pub(super) struct Receptacle<'a> {
    /// What the file says of it.
    pub(super) opening: &'a Opening,
    /// The face it is in.
    pub(super) face: &'a Face,
    /// Its box in the face of the frame, in the world.
    pub(super) bounds: Bounds3,
}

impl Receptacle<'_> {
    /// The middle of it.
    pub(super) fn middle(&self) -> Point3 {
        nalgebra::center(&self.bounds.low, &self.bounds.high)
    }
}

/// Every receptacle, face by face.
pub(super) fn receptacles<'a>(subject: &Subject<'a>) -> Vec<Receptacle<'a>> {
    let plan: &'a Plan = subject.plan;
    let in_face = |face: &'a Face| {
        face.openings.iter().filter_map(move |o| {
            let opening = plan.design.openings.get(o.index)?;
            let is_one = o.kind == Some(crate::design::OpeningKind::Receptacle);
            let corner = |s: f64, z: f64| {
                let p = face.point(s, 0.0);
                Point3::new(p.x, p.y, z)
            };
            let bounds = Bounds3::around([corner(o.s0, o.z0), corner(o.s1, o.z1)])?;
            is_one.then_some(Receptacle {
                opening,
                face,
                bounds,
            })
        })
    };
    plan.faces.iter().flat_map(in_face).collect()
}

/// The receptacles, or the answer that there is none.
pub(super) fn or_say_none<'a>(subject: &Subject<'a>, answers: &mut Answers) -> Vec<Receptacle<'a>> {
    let found = receptacles(subject);
    if found.is_empty() {
        answers.nothing("there is no receptacle");
    }
    found
}

/// The room that the body of an appliance takes up, in the world; `None` where there is no such appliance.
pub(super) fn body_of(plan: &Plan, appliance: usize) -> Option<Bounds3> {
    let body = plan
        .bodies
        .iter()
        .find(|b| b.of == BodyOf::Appliance(appliance))?;
    Some(body.bounds(&plan.runs))
}

/// From one box to another, the shortest way, millimetres; zero where they meet.
pub(super) fn between(a: &Bounds3, b: &Bounds3) -> f64 {
    let apart = |i: usize| (a.low[i] - b.high[i]).max(b.low[i] - a.high[i]).max(0.0);
    (0..3).map(|i| apart(i) * apart(i)).sum::<f64>().sqrt()
}

/// True when the file sets the limit itself: what is only a caution as an indoor rule or a practice then binds.
pub(super) fn is_own(bound: &Bound, limit: &Limit) -> bool {
    bound.source != limit.source
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_way_between_boxes_is_that_of_paper() {
        let cube = |x: f64, y: f64, z: f64| Bounds3 {
            low: Point3::new(x, y, z),
            high: Point3::new(x + 1.0, y + 1.0, z + 1.0),
        };
        // Gaps of 3 and 4 make 5; of 2, 3 and 6 make 7; boxes that overlap in one direction are apart in the others only.
        assert_eq!(between(&cube(0.0, 0.0, 0.0), &cube(4.0, 5.0, 0.5)), 5.0);
        assert_eq!(between(&cube(3.0, 4.0, 7.0), &cube(0.0, 0.0, 0.0)), 7.0);
        assert_eq!(between(&cube(0.0, 0.0, 0.0), &cube(0.5, 0.5, 0.5)), 0.0);
    }
}
