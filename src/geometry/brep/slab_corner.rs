//! Where two sides of a slab meet: mitred, eased, or one ending in the plane of the other.

use super::sewing::{Sewing, back};
use super::sides::{Frame, Lay, reversed};
use super::slab::SideEnd;
use super::surfaces::Turn;
use super::{Along, Curve, Oval};
use crate::geometry::slab::{Joint, Which};
use crate::geometry::{
    Point2, Point3, ProfilePoint, Segment, Slab, SlabCorner, SlabEdge, Vector2, Vector3,
};

/// A corner that is sewn: the ends of both sides, and what it adds to the bounds of the level faces.
#[derive(Default)]
pub(super) struct Met {
    /// The end of the side that ends here.
    pub end: SideEnd,
    /// The start of the side that starts here.
    pub start: SideEnd,
    /// On the top face.
    pub top: Vec<Along>,
    /// On the underside, counter-clockwise as seen from above.
    pub under: Vec<Along>,
}

/// An eased corner whose arc is shorter than this has shrunk to a point, millimetres.
const POINT: f64 = 1e-7;

fn in_space(p: Point2, z: f64) -> Point3 {
    Point3::new(p.x, p.y, z)
}

fn level(v: Vector2) -> Vector3 {
    Vector3::new(v.x, v.y, 0.0)
}

/// How a profile lies that starts at a point of the plan's outermost line and whose insets run along a vector.
fn lay(from: Point2, inset: Vector2) -> Lay {
    Lay {
        origin: in_space(from, 0.0),
        x: level(inset),
        y: Vector3::z(),
    }
}

/// Sews corner `i`.
pub(super) fn meet(slab: &Slab, sewing: &mut Sewing, i: usize) -> Option<Met> {
    let corner = slab.corner(i);
    match slab.joint(i)? {
        Joint::Mitre if corner.easing.is_some() => eased(sewing, &corner, &slab.edges[i]),
        Joint::Mitre => Some(mitred(sewing, &corner, &slab.edges[i])),
        Joint::Ends { plain, shared } => {
            flush(sewing, &corner, slab.ending(i, plain), plain, shared)
        }
    }
}

/// Edges of stretches between corners that are there.
fn end(
    sewing: &mut Sewing,
    corners: Vec<usize>,
    stretches: impl Iterator<Item = Segment>,
    lay: impl Fn(usize) -> Lay,
) -> SideEnd {
    let stretches = stretches.enumerate().map(|(k, s)| {
        let ends = [corners[k], corners[k + 1]];
        vec![sewing.edge(ends, lay(k).curve(&s))]
    });
    SideEnd {
        stretches: stretches.collect(),
        corners,
    }
}

/// The vector that the mitre runs along as the inset grows by one.
fn mitre(corner: &SlabCorner) -> Vector2 {
    corner.meet(1.0, 1.0) - corner.at
}

fn mitred(sewing: &mut Sewing, corner: &SlabCorner, edge: &SlabEdge) -> Met {
    let lay = lay(corner.at, mitre(corner));
    let place = |p: &ProfilePoint| lay.at(Point2::new(p.inset, p.z));
    let corners = edge
        .profile
        .iter()
        .map(|p| sewing.point(place(p)))
        .collect();
    let both = end(sewing, corners, edge.stretches(), |_| lay);
    Met {
        end: both.clone(),
        start: both,
        ..Met::default()
    }
}

/// An eased corner: at each point of the profile an arc or a short side, or the mitre's point where nothing is left of it.
fn eased(sewing: &mut Sewing, corner: &SlabCorner, edge: &SlabEdge) -> Option<Met> {
    let easing = corner.easing?;
    let mut rows = Vec::with_capacity(edge.profile.len());
    for p in &edge.profile {
        let (first, last) = corner.ends(p.inset, p.inset);
        if (last - first).norm() < POINT {
            let at = corner.meet(p.inset, p.inset);
            let point = sewing.point(in_space(at, p.z));
            rows.push(([point, point], None));
            continue;
        }
        let ends = [first, last].map(|q| sewing.point(in_space(q, p.z)));
        let curve = if easing.round {
            around(corner, easing.centre, first, p.z)
        } else {
            Curve::Line
        };
        rows.push((ends, Some(sewing.edge(ends, curve))));
    }
    let single = |k: usize| rows[k].1.is_none();
    let lay_from = |from: Point2| {
        let (straight, rows) = (lay(from, (easing.centre - from) / easing.vanishes), &rows);
        move |k: usize| {
            if rows[k].1.is_none() && rows[k + 1].1.is_none() {
                lay(corner.at, mitre(corner))
            } else {
                straight
            }
        }
    };
    let ends = |k: usize| rows.iter().map(|r| r.0[k]).collect::<Vec<_>>();
    let before = end(sewing, ends(0), edge.stretches(), lay_from(easing.first));
    let mut after = end(sewing, ends(1), edge.stretches(), lay_from(easing.last));
    for (k, stretch) in edge.stretches().enumerate() {
        if single(k) && single(k + 1) {
            after.stretches[k].clone_from(&before.stretches[k]);
            continue;
        }
        let mut rim = before.stretches[k].clone();
        rim.extend(rows[k + 1].1);
        rim.extend(back(&after.stretches[k]));
        rim.extend(rows[k].1.map(Along::back));
        sewing.face(easing_surface(corner, &stretch)?, vec![rim]);
    }
    Some(Met {
        top: rows.first()?.1.into_iter().collect(),
        under: rows.last()?.1.into_iter().collect(),
        end: before,
        start: after,
    })
}

/// The arc round a centre from a point, as far as the corner turns.
fn around(corner: &SlabCorner, centre: Point2, from: Point2, z: f64) -> Curve {
    let first = level(from - centre);
    Curve::Oval(Oval {
        centre: in_space(centre, z),
        first,
        second: Vector3::z().cross(&first) * corner.turn.signum(),
    })
}

/// What an easing's face for a stretch lies on.
fn easing_surface(corner: &SlabCorner, stretch: &Segment) -> Option<(super::Surface, bool)> {
    let easing = corner.easing?;
    if !easing.round {
        let along = level((easing.last - easing.first).normalize());
        let frame = Frame {
            origin: in_space(easing.first, 0.0),
            x: Vector3::z().cross(&along),
            y: Vector3::z(),
            z: along,
        };
        return Some(frame.drawn(stretch));
    }
    let turn = Turn {
        origin: in_space(easing.centre, 0.0),
        axis: Vector3::z(),
        middle: level((nalgebra::center(&easing.first, &easing.last) - easing.centre).normalize()),
    };
    let sign = corner.turn.signum();
    let [from, to] =
        [stretch.from, stretch.to].map(|p| Point2::new((easing.vanishes - p.x) * sign, p.y));
    let bulge = -stretch.bulge * sign;
    let side = Segment { from, to, bulge };
    // At an outward corner insets run towards the axis: the side is its mirror image.
    Some(if corner.is_convex() {
        turn.surface(&reversed(&side))
    } else {
        turn.surface(&side)
    })
}

/// A corner where one side ends in the plane of the plain other.
fn flush(
    sewing: &mut Sewing,
    corner: &SlabCorner,
    ending: &SlabEdge,
    plain: Which,
    shared: usize,
) -> Option<Met> {
    let from = shared.saturating_sub(1);
    let [mitred, ended] = [
        mitre(corner),
        match plain {
            Which::Before => corner.meet(0.0, 1.0) - corner.at,
            Which::After => corner.meet(1.0, 0.0) - corner.at,
        },
    ]
    .map(|inset| lay(corner.at, inset));
    let place = |(k, p): (usize, &ProfilePoint)| {
        let lay = if shared > 0 && k <= from {
            mitred
        } else {
            ended
        };
        lay.at(Point2::new(p.inset, p.z))
    };
    let points = ending.profile.iter().enumerate();
    let corners: Vec<usize> = points.map(|p| sewing.point(place(p))).collect();
    let mut own = end(sewing, corners, ending.stretches(), |k| {
        if k < from { mitred } else { ended }
    });
    let hangs = ending.profile.iter().any(|p| p.z < 0.0);
    let passing = ending.stretches().position(|s| {
        s.bulge == 0.0 && s.from.x == 0.0 && s.to.x == 0.0 && s.from.y > 0.0 && s.to.y < 0.0
    });
    let bottom = *own.corners.last()?;
    let (last, at, under) = match passing {
        Some(k) if hangs && !corner.is_convex() => {
            let at = split(sewing, &mut own, k, ended.at(Point2::origin()));
            let closing = sewing.line(at, bottom);
            hanging(sewing, corner, &own, (k, closing), plain)?;
            let mut last = own.stretches[from..k].concat();
            last.push(own.stretches[k][0]);
            let under = if plain == Which::Before {
                closing
            } else {
                closing.back()
            };
            (last, at, vec![under])
        }
        _ => (own.stretches[from..].concat(), bottom, Vec::new()),
    };
    let mut other = SideEnd {
        corners: own.corners[..=from].to_vec(),
        stretches: own.stretches[..from].to_vec(),
    };
    other.corners.push(at);
    other.stretches.push(last);
    let (end, start) = match plain {
        Which::Before => (other, own),
        Which::After => (own, other),
    };
    Some(Met {
        end,
        start,
        top: Vec::new(),
        under,
    })
}

/// Parts a stretch at a point on it; gives the point.
fn split(sewing: &mut Sewing, own: &mut SideEnd, k: usize, at: Point3) -> usize {
    let middle = sewing.point(at);
    let first = own.stretches[k][0];
    let second = sewing.cut(first, middle);
    own.stretches[k] = vec![first, second];
    middle
}

/// Sews the end of what hangs below the underside at an inward corner: there it is seen from the other way than the
/// plain side.
fn hanging(
    sewing: &mut Sewing,
    corner: &SlabCorner,
    own: &SideEnd,
    (k, closing): (usize, Along),
    plain: Which,
) -> Option<()> {
    let mut bound = vec![own.stretches[k][1]];
    bound.extend(own.stretches[k + 1..].concat());
    bound.push(closing.back());
    let (normal, bound) = match plain {
        Which::After => (corner.after, bound),
        Which::Before => (corner.before, back(&bound)),
    };
    sewing.plane(level(normal), vec![bound])
}
