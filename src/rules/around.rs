//! What stands around the island, and where it is seen from a face.

use crate::design::{Design, ObjectKind, SiteObject};
use crate::diagnostics::Place;
use crate::geometry::{Bounds2, Point2, Vector2};
use crate::plan::{Face, Layers, Plan};

/// Something that stands on the ground or on the island, as a box in world coordinates, millimetres.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Around {
    /// Its name in messages, such as `the post 'north post'`.
    pub name: String,
    /// Its place in the file.
    pub place: Place,
    /// The ground it takes.
    pub plan: Bounds2,
    /// From where to where above the datum.
    pub z: (f64, f64),
    /// The number of the face, where it is a face of the island.
    pub face: Option<usize>,
}

/// Where something is, seen from a face: along it and out from the plane of its frame, millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Seen {
    /// From where to where along the face.
    pub s: (f64, f64),
    /// From where to where in front of it; negative behind.
    pub out: (f64, f64),
}

/// What stands in the way on the site: ways that people walk do not. `None` where the file says nothing of it.
pub(super) fn objects(plan: &Plan) -> Option<Vec<Around>> {
    let objects = plan.design.site.objects.as_ref()?;
    let stands = objects.iter().filter(|o| o.kind != ObjectKind::Walkway);
    Some(stands.map(object).collect())
}

/// The place of the site's group in the file, whether or not it is written.
pub(super) fn site_group(design: &Design) -> Place {
    Place {
        key: "site".to_owned(),
        ..design.site.place.clone()
    }
}

/// A site object as it stands.
pub(super) fn object(o: &SiteObject) -> Around {
    let point = |p: [f64; 3]| Point2::new(p[0], p[1]);
    Around {
        name: format!("the {} '{}'", o.kind.name(), o.name),
        place: o.place.clone(),
        plan: Bounds2 {
            low: point(o.low),
            high: point(o.high),
        },
        z: (o.low[2], o.high[2]),
        face: None,
    }
}

/// The finished faces of the island as upright planes; a face at a wall ends at its frame.
pub(super) fn faces(plan: &Plan) -> Vec<Around> {
    let (low, high) = (plan.levels.frame_bottom, plan.levels.frame_top);
    let one = |(i, f): (usize, &Face)| {
        let out = finished(plan, f);
        let (a, b) = (f.point(0.0, out), f.point(f.length, out));
        Around {
            name: format!("the {}", f.name),
            place: plan.design.runs[f.run].name.place.clone(),
            plan: Bounds2 {
                low: a.inf(&b),
                high: a.sup(&b),
            },
            z: (low, high),
            face: Some(i),
        }
    };
    plan.faces.iter().enumerate().map(one).collect()
}

/// From the frame to the finished face, millimetres.
pub(super) fn finished(plan: &Plan, face: &Face) -> f64 {
    if face.wall {
        0.0
    } else {
        Layers::of(&plan.design.trade).finish.outer
    }
}

/// From the frame to the edge of the counter, millimetres.
pub(super) fn counter_edge(plan: &Plan, face: &Face) -> f64 {
    if face.wall {
        0.0
    } else {
        finished(plan, face) + plan.design.counter.overhang.of(face.side).mm()
    }
}

/// Where a box is, seen from a face.
pub(super) fn seen_from(face: &Face, plan: &Bounds2) -> Seen {
    let (low, high) = (plan.low, plan.high);
    let corners = [
        low,
        Point2::new(high.x, low.y),
        high,
        Point2::new(low.x, high.y),
    ];
    let range = |way: &Vector2| {
        let at = corners.map(|c| (c - face.start).dot(way));
        let ends = (f64::INFINITY, f64::NEG_INFINITY);
        at.iter().fold(ends, |e, d| (e.0.min(*d), e.1.max(*d)))
    };
    Seen {
        s: range(&face.along),
        out: range(&face.outward),
    }
}

/// How much two stretches share; negative when they are apart by so much.
pub(super) fn shared(a: (f64, f64), b: (f64, f64)) -> f64 {
    a.1.min(b.1) - a.0.max(b.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn a_post_is_seen_from_the_faces_as_on_paper() {
        // The trial island: cook run 120 × 30 in along x; the post is 6 × 6 in at (−30, 66): from the left end, whose s
        // runs towards the cook from y = 30, it is 24 to 30 in out and from −42 to −36 in along.
        let plan = Trial::sound().plan();
        let posts = objects(&plan).unwrap();
        let post = posts.iter().find(|o| o.name.contains("north")).unwrap();
        let left = plan.faces.iter().find(|f| f.mark == "CL").unwrap();
        let seen = seen_from(left, &post.plan);
        let inches = |r: (f64, f64)| ((r.0 / 25.4).round(), (r.1 / 25.4).round());
        assert_eq!(
            (inches(seen.s), inches(seen.out)),
            ((-42.0, -36.0), (24.0, 30.0))
        );
        assert!(posts.iter().all(|o| !o.name.contains("path")));
    }
}
