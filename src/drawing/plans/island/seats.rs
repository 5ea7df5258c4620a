//! Stools along the seating sides, and the room behind those who sit.

use crate::catalog::practice;
use crate::design::{Passage, Side};
use crate::drawing::fit::Fit;
use crate::drawing::page::Page;
use crate::drawing::plans::style::{FINE, HIDDEN};
use crate::geometry::{Bounds2, Point2, Vector2};
use crate::plan::{Body, BodyOf, Corner, CounterSide, Plan, SideKind};

/// Counter for one seat, published kitchen planning guidelines: 24 in, millimetres.
pub(super) const SEAT: f64 = practice::SEAT;
/// Lost beside an inside corner, where knees meet, common practice: 12 in.
const INNER: f64 = practice::SEAT_AT_INNER_CORNER;
/// Half of a stool's seat, common practice: 14 in across.
const STOOL: f64 = 177.8;

/// A stretch of the counter's edge where people can sit.
#[derive(Clone, Copy, Debug)]
struct Stretch<'a> {
    side: &'a CounterSide,
    /// From where to where along the side.
    t: (f64, f64),
    seats: u32,
}

/// The stools, and from where to where the room behind them reaches.
pub(super) struct Seats {
    /// The middles of the stools, in the world.
    pub stools: Vec<Point2>,
    /// The limit of the room behind the seats of each edge.
    limits: Vec<[Point2; 2]>,
    /// How deep that room is, from the counter's edge, and what it is.
    pub room: Option<(f64, &'static str)>,
}

/// Where those sit whom the file asks for. Nobody is seated before something hot as long as all find room elsewhere.
pub(super) fn seats(plan: &Plan) -> Seats {
    let people = &plan.design.people;
    let count = people.seats.as_ref().map_or(0, |s| s.value).min(200);
    let cool = filled(stretches(plan, true), count);
    let all_seated = cool
        .iter()
        .all(|s| s.t.1 - s.t.0 >= SEAT * f64::from(s.seats));
    let filled = if all_seated && !cool.is_empty() {
        cool
    } else {
        filled(stretches(plan, false), count)
    };
    let taken: Vec<_> = filled.iter().filter(|s| s.seats > 0).collect();
    let room = people.behind_seats.as_ref().map(|b| behind(b.value));
    let mut limits: Vec<[Point2; 2]> = Vec::new();
    for stretch in &taken {
        let depth = room.map_or(0.0, |r| r.0);
        let side = stretch.side;
        let out = outward(plan, side) * depth;
        let limit = [side.start + out, side.end + out];
        if depth > 0.0 && !limits.contains(&limit) {
            limits.push(limit);
        }
    }
    Seats {
        stools: taken.iter().flat_map(|s| s.stools(plan)).collect(),
        limits,
        room: room.filter(|_| count > 0),
    }
}

/// How much room people need behind those who sit: published kitchen planning guidelines.
fn behind(passage: Passage) -> (f64, &'static str) {
    match passage {
        Passage::Nobody => (812.8, "nobody passes"),
        Passage::Edging => (914.4, "people edge past"),
        Passage::Walking => (1117.6, "people walk past"),
    }
}

fn outward(plan: &Plan, side: &CounterSide) -> Vector2 {
    plan.faces
        .get(side.face)
        .map_or_else(Vector2::zeros, |f| f.outward)
}

/// Edges over seating sides less what inside corners take, and less the stretches before what is hot if asked so.
fn stretches(plan: &Plan, cool: bool) -> Vec<Stretch<'_>> {
    let mut found = Vec::new();
    for side in &plan.counter.sides {
        let Some(face) = plan.faces.get(side.face) else {
            continue;
        };
        if side.kind != SideKind::Exposed || face.side != Side::Seating {
            continue;
        }
        let next = &plan.faces[(side.face + 1) % plan.faces.len()];
        let lost = |corner: Corner| if corner == Corner::Reflex { INNER } else { 0.0 };
        let whole = (lost(face.corner), side.length() - lost(next.corner));
        let mut free = vec![whole];
        for hot in hot(plan, face.run).filter(|_| cool) {
            free = free
                .into_iter()
                .flat_map(|t| less(t, over(plan, side, hot)))
                .collect();
        }
        found.extend(
            free.into_iter()
                .filter(|t| t.1 > t.0)
                .map(|t| Stretch { side, t, seats: 0 }),
        );
    }
    found
}

/// The bodies of a run that give off heat.
fn hot(plan: &Plan, run: usize) -> impl Iterator<Item = &Body> {
    let cooks = |body: &&Body| match body.of {
        BodyOf::Appliance(number) => plan
            .design
            .appliances
            .get(number)
            .is_some_and(crate::design::Appliance::cooks),
        BodyOf::Opening(_) => false,
    };
    plan.bodies
        .iter()
        .filter(move |b| b.run == run)
        .filter(cooks)
}

/// From where to where a body stands along a side.
fn over(plan: &Plan, side: &CounterSide, body: &Body) -> (f64, f64) {
    let along = (side.end - side.start) / side.length().max(1.0);
    let bounds = body.bounds(&plan.runs);
    let t = [bounds.low.xy(), bounds.high.xy()].map(|p| (p - side.start).dot(&along));
    (t[0].min(t[1]), t[0].max(t[1]))
}

/// A stretch without another.
fn less(t: (f64, f64), other: (f64, f64)) -> Vec<(f64, f64)> {
    if other.1 <= t.0 || other.0 >= t.1 {
        return vec![t];
    }
    vec![(t.0, other.0), (other.1, t.1)]
        .into_iter()
        .filter(|(a, b)| b > a)
        .collect()
}

/// Seats given one by one to the stretch that leaves the most for each.
fn filled(mut stretches: Vec<Stretch>, count: u32) -> Vec<Stretch> {
    for _ in 0..count {
        let share = |s: &Stretch| (s.t.1 - s.t.0) / f64::from(s.seats + 1);
        let widest = stretches
            .iter_mut()
            .max_by(|a, b| share(a).total_cmp(&share(b)));
        if let Some(stretch) = widest {
            stretch.seats += 1;
        }
    }
    stretches
}

impl Stretch<'_> {
    /// The stools, evenly along the stretch, half under the edge.
    fn stools(&self, plan: &Plan) -> Vec<Point2> {
        let along = (self.side.end - self.side.start) / self.side.length().max(1.0);
        let out = outward(plan, self.side) * (STOOL * 0.6);
        let each = (self.t.1 - self.t.0) / f64::from(self.seats.max(1));
        (0..self.seats)
            .map(|k| self.side.start + along * (self.t.0 + each * (f64::from(k) + 0.5)) + out)
            .collect()
    }
}

impl Seats {
    /// The ground they and the room behind them need; `None` without seats.
    pub fn ground(&self) -> Option<Bounds2> {
        let reach = Vector2::repeat(STOOL);
        let stools = self.stools.iter().flat_map(|s| [s - reach, s + reach]);
        Bounds2::around(stools.chain(self.limits.iter().flatten().copied()))
    }

    pub fn draw(&self, page: &mut Page, fit: &Fit) {
        for stool in &self.stools {
            let (middle, radius) = (fit.point(*stool), STOOL * fit.scale.factor);
            FINE.circle(page, middle, radius);
            // No mark stands on a stool.
            let half = Vector2::repeat(radius * 0.7);
            page.reserve(Bounds2 {
                low: middle - half,
                high: middle + half,
            });
        }
        for [from, to] in &self.limits {
            HIDDEN.line(page, fit.point(*from), fit.point(*to));
        }
    }

    /// The middles of the limits, for their names.
    pub fn limits(&self) -> &[[Point2; 2]] {
        &self.limits
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::{People, sample};

    fn seated(count: u32, length: f64) -> Seats {
        let mut design = sample::design(vec![sample::run("bar", length, None, &[])]);
        design.people = People {
            seats: Some(sample::placed(count)),
            behind_seats: Some(sample::placed(Passage::Edging)),
            ..People::default()
        };
        seats(&crate::plan::lay_out(design).unwrap())
    }

    #[test]
    fn stools_stand_evenly_along_the_seating_side() {
        // A run of 3000, finished 22 and overhangs 40 at the ends: an edge from -62 to 3062, four stools 781 apart.
        let seats = seated(4, 3000.0);
        let mut xs: Vec<f64> = seats.stools.iter().map(|p| p.x).collect();
        xs.sort_by(f64::total_cmp);
        assert_eq!(xs.len(), 4);
        assert!((xs[0] - (-62.0 + 390.5)).abs() < 1e-9 && (xs[1] - xs[0] - 781.0).abs() < 1e-9);
        // People edge past 36 in behind the counter's edge at 900 + 22 + 250.
        let ground = seats.ground().unwrap();
        assert!((ground.high.y - (1172.0 + 914.4)).abs() < 1e-9);
        assert_eq!(seats.room, Some((914.4, "people edge past")));
    }

    #[test]
    fn nobody_is_drawn_where_the_file_seats_nobody() {
        let seats = seated(0, 3000.0);
        assert!(seats.stools.is_empty() && seats.ground().is_none() && seats.room.is_none());
    }

    #[test]
    fn a_stretch_before_something_hot_is_left_out() {
        assert_eq!(
            less((0.0, 3000.0), (1000.0, 1700.0)),
            [(0.0, 1000.0), (1700.0, 3000.0)]
        );
        assert_eq!(less((0.0, 3000.0), (-50.0, 700.0)), [(700.0, 3000.0)]);
        assert_eq!(less((0.0, 500.0), (700.0, 900.0)), [(0.0, 500.0)]);
    }
}
