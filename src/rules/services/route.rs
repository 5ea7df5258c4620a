//! The way of a conduit within the frame: round the island behind the faces, from one opening to the next.

use crate::geometry::{Point2, Vector2};
use crate::plan::{FaceOpening, Plan, Upright};

/// Where an opening stands on the loop of faces.
#[derive(Clone, Copy)]
pub(super) struct Stop {
    face: usize,
    s: f64,
}

/// What a way from one opening to the next goes through.
pub(super) struct Route<'a> {
    /// The uprights whose webs it crosses.
    pub(super) uprights: Vec<&'a Upright>,
    /// The framed openings that it would have to cross in the open.
    pub(super) openings: Vec<&'a FaceOpening>,
}

/// A stretch behind one face, from s to s.
type Stretch = (usize, f64, f64);

/// Where the opening with a name stands; `None` where no face has it.
pub(super) fn stop(plan: &Plan, name: &str) -> Option<Stop> {
    let mut faces = plan.faces.iter().enumerate();
    faces.find_map(|(face, f)| {
        let o = f.openings.iter().find(|o| o.name == name)?;
        let s = f64::midpoint(o.s0, o.s1);
        Some(Stop { face, s })
    })
}

/// The shorter way round the island between two stops at a height, in the middle of the panels' thickness.
pub(super) fn route(plan: &Plan, from: Stop, to: Stop, height: f64, radius: f64) -> Route<'_> {
    let ways = [stretches(plan, from, to), stretches(plan, to, from)];
    let long = |way: &[Stretch]| way.iter().map(|(_, a, b)| b - a).sum::<f64>();
    let [there, back] = &ways;
    let way = if long(back) < long(there) {
        back
    } else {
        there
    };
    let line = line(plan, way);
    let at_height = |u: &&Upright| u.z0 - radius < height && height < u.z1 + radius;
    let crossed = plan.panels.iter().flat_map(|panel| {
        let line = &line;
        panel.uprights.iter().filter(at_height).filter(move |u| {
            let p = if u.web_high { u.p1 } else { u.p0 };
            let web = (panel.point(p, 0.0), panel.point(p, plan.sizes.panel));
            line.windows(2).any(|l| cross((l[0], l[1]), web))
        })
    });
    let open = way.iter().flat_map(|&(face, a, b)| {
        plan.faces[face].openings.iter().filter(move |o| {
            o.is_framed(&plan.sizes)
                && (o.z0 - radius < height && height < o.z1 + radius)
                && (o.s0 < b && a < o.s1)
        })
    });
    Route {
        uprights: crossed.collect(),
        openings: open.collect(),
    }
}

/// The stretches from one stop to another in the order of the faces.
fn stretches(plan: &Plan, from: Stop, to: Stop) -> Vec<Stretch> {
    let n = plan.faces.len();
    if from.face == to.face && from.s <= to.s {
        return vec![(from.face, from.s, to.s)];
    }
    let steps = match (to.face + n - from.face) % n {
        0 => n,
        steps => steps,
    };
    let one = |k: usize| {
        let face = (from.face + k) % n;
        let start = if k == 0 { from.s } else { 0.0 };
        let end = if k == steps {
            to.s
        } else {
            plan.faces[face].length
        };
        (face, start, end)
    };
    (0..=steps).map(one).collect()
}

/// The stretches as a line in plan, half a panel behind the faces; it turns where two panels' middles meet.
fn line(plan: &Plan, way: &[Stretch]) -> Vec<Point2> {
    let half = plan.sizes.panel / 2.0;
    let mut points = Vec::new();
    for (k, &(face, from, to)) in way.iter().enumerate() {
        let this = &plan.faces[face];
        match k.checked_sub(1).and_then(|k| way.get(k)) {
            None => points.push(this.point(from, -half)),
            Some(before) => {
                let out = this.outward + plan.faces[before.0].outward;
                points.push(this.start - out * half);
            }
        }
        if k + 1 == way.len() {
            points.push(this.point(to, -half));
        }
    }
    points
}

/// True when two stretches cross, the ends of the second counted.
fn cross(a: (Point2, Point2), b: (Point2, Point2)) -> bool {
    let side = |l: (Point2, Point2), p: Point2| {
        let (d, e): (Vector2, Vector2) = (l.1 - l.0, p - l.0);
        d.perp(&e)
    };
    side(a, b.0) * side(a, b.1) <= 0.0 && side(b, a.0) * side(b, a.1) < 0.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::sample::{design, run};
    use crate::plan::lay_out;

    #[test]
    fn the_shorter_way_crosses_the_studs_between() {
        // A run of 2000: studs 400 apart on the working face, their webs on one side of each grid line.
        let plan = lay_out(design(vec![run("cook", 2000.0, None, &[])])).unwrap();
        let at = |face: usize, s: f64| Stop { face, s };
        let between = |a: Stop, b: Stop| route(&plan, a, b, 356.0, 10.0).uprights.len();
        // From 500 to 1500 lie the grid lines of 800 and 1200, either way.
        assert_eq!(between(at(0, 500.0), at(0, 1500.0)), 2);
        assert_eq!(between(at(0, 1500.0), at(0, 500.0)), 2);
        assert_eq!(between(at(0, 450.0), at(0, 700.0)), 0);
        // Round the right end, 900 deep: the end panel stands between the long ones, so of its studs the one at its end is
        // crossed, of the working panel's the one of 1600; its end stud is passed by in front.
        assert_eq!(between(at(0, 1500.0), at(1, 200.0)), 2);
        // A way is as long either way round at most: the face opposite is reached round the nearer end.
        assert_eq!(stretches(&plan, at(0, 1900.0), at(2, 100.0)).len(), 3);
    }
}
