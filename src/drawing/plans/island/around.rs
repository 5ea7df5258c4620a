//! What stands around the island, as far as it is within reach of it: posts, walls, fences, ways, roof edges.

use super::gaps::{Gap, gaps};
use crate::design::{ObjectKind, SiteObject};
use crate::drawing::fit::Fit;
use crate::drawing::marks::{Mark, place_led, place_marks};
use crate::drawing::page::Page;
use crate::drawing::plans::labels;
use crate::drawing::plans::spot;
use crate::drawing::plans::style::{FINE, GROUND, OVERHEAD, STANDING, Style, corners};
use crate::geometry::{Bounds2, Point2};
use crate::plan::{Face, Plan};
use crate::units::Length;

/// What stands within this distance of the finished faces is on the plan of the island, millimetres: 4 ft. The rest is on
/// the site plan.
pub(super) const REACH: f64 = 1219.2;
/// How much of a wall or a way is drawn past what it stands beside, millimetres.
const PAST: f64 = 100.0;
/// As many distances are dimensioned at most.
const DIMENSIONED: usize = 6;

/// The objects within reach, and the part of the site that the plan shows.
pub(super) struct Around<'a> {
    objects: Vec<(&'a SiteObject, Bounds2)>,
    /// What is drawn, in the world.
    pub shown: Bounds2,
}

impl<'a> Around<'a> {
    /// What stands within reach around what is drawn of the island itself; distances count from its finished faces.
    pub fn new(plan: &'a Plan, finished: &Bounds2, drawn: Bounds2, reach: f64) -> Self {
        let window = grown(finished, reach);
        let all = plan.design.site.objects.iter().flat_map(|o| o.value.iter());
        let near: Vec<_> = all
            .map(|o| (o, ground(o)))
            .filter(|(_, area)| touches(area, &window))
            .collect();
        let mut shown = drawn;
        for (object, area) in &near {
            shown = match object.kind {
                ObjectKind::Roof | ObjectKind::Beam => shown,
                ObjectKind::Post | ObjectKind::Other => shown.union(within(area, &window)),
                ObjectKind::Wall | ObjectKind::Fence | ObjectKind::Walkway => {
                    reaching(&shown, area)
                }
            };
        }
        let long = |o: &SiteObject| !matches!(o.kind, ObjectKind::Post | ObjectKind::Other);
        if near.iter().any(|(o, _)| long(o)) {
            shown = grown(&shown, PAST);
        }
        let objects = near
            .into_iter()
            .filter(|(o, area)| is_seen(o, area, &shown))
            .collect();
        Self { objects, shown }
    }

    /// Draws them, what is cut off by the plan's limit without an edge there.
    pub fn draw(&self, page: &mut Page, fit: &Fit) {
        for (object, area) in &self.objects {
            let seen = within(area, &self.shown);
            if is_cut(object.kind) {
                let grey = corners(&fit.area(&seen));
                page.path(STANDING.0, None, STANDING.2, grey, true, Some(0.85));
            }
            for edge in edges(area, &self.shown) {
                let [from, to] = edge.map(|p| fit.point(p));
                style(object.kind).line(page, from, to);
            }
            if object.kind == ObjectKind::Post {
                // Crossed diagonals: a post that is cut.
                let on = fit.area(&seen);
                let other = [
                    Point2::new(on.low.x, on.high.y),
                    Point2::new(on.high.x, on.low.y),
                ];
                FINE.line(page, on.low, on.high);
                FINE.line(page, other[0], other[1]);
            }
        }
    }

    /// True when a wall of the site is what a side of the island stands against.
    pub fn has_wall_at(&self, face: &Face) -> bool {
        let middle = face.point(face.length / 2.0, 10.0);
        self.objects.iter().any(|(object, area)| {
            object.kind == ObjectKind::Wall
                && touches(
                    area,
                    &Bounds2 {
                        low: middle,
                        high: middle,
                    },
                )
        })
    }

    /// Names them; says how many found no room.
    pub fn name(&self, page: &mut Page, plan: &Plan, fit: &Fit) -> usize {
        let mut missing = 0;
        for (object, area) in &self.objects {
            let text = words(plan, object);
            missing += if is_overhead(object.kind) {
                let edges = edges(area, &self.shown);
                let sheet = edges.iter().map(|edge| edge.map(|p| fit.point(p)));
                usize::from(!labels::along_first(page, &text, sheet))
            } else {
                let area = fit.area(&within(area, &self.shown));
                let mark = Mark { text, area };
                if object.kind == ObjectKind::Post {
                    place_led(page, &[mark])
                } else {
                    place_marks(page, &[mark], &[])
                }
            };
        }
        missing
    }

    /// Dimensions from the finished faces, whose corners these are, to what stands there: the nearest, square to the faces.
    pub fn measure(&self, page: &mut Page, plan: &Plan, fit: &Fit, finished: &[Point2]) {
        let notation = plan.design.project.units;
        let mut gaps: Vec<Gap> = self
            .objects
            .iter()
            .filter(|(object, _)| !is_overhead(object.kind))
            .flat_map(|(_, area)| gaps(&within(area, &self.shown), finished))
            .collect();
        gaps.sort_by(|a, b| a.width().total_cmp(&b.width()));
        for gap in gaps.iter().take(DIMENSIONED) {
            let places = gap.places().map(|at| gap.spot(at));
            spot::first_extended(page, notation, fit, places);
        }
    }
}

/// What it takes at its foot, whether or not it leans.
fn ground(object: &SiteObject) -> Bounds2 {
    object.stands.foot
}

fn is_overhead(kind: ObjectKind) -> bool {
    matches!(kind, ObjectKind::Roof | ObjectKind::Beam)
}

fn is_cut(kind: ObjectKind) -> bool {
    matches!(kind, ObjectKind::Wall | ObjectKind::Post)
}

/// True when something of it is on the plan: of a roof one of its edges.
fn is_seen(object: &SiteObject, area: &Bounds2, shown: &Bounds2) -> bool {
    touches(area, shown) && !(is_overhead(object.kind) && edges(area, shown).is_empty())
}

fn style(kind: ObjectKind) -> Style {
    match kind {
        ObjectKind::Post | ObjectKind::Wall => STANDING,
        ObjectKind::Beam | ObjectKind::Roof => OVERHEAD,
        ObjectKind::Fence | ObjectKind::Other | ObjectKind::Walkway => GROUND,
    }
}

/// Its name, whether it can burn, and for what hangs overhead how high.
fn words(plan: &Plan, object: &SiteObject) -> String {
    let mut text = object.name.clone();
    if is_overhead(object.kind) {
        let height = Length::millimetres(object.low[2]);
        let height = plan.design.project.units.spell_with_unit(height);
        text = format!("edge of {text}, {height} up");
    }
    match (&object.combustible, object.kind) {
        (Some(burns), _) if burns.value => text.push_str(", can burn"),
        (None, kind) if kind != ObjectKind::Walkway => {
            text.push_str(", not said whether it can burn");
        }
        _ => {}
    }
    text
}

fn grown(area: &Bounds2, by: f64) -> Bounds2 {
    crate::drawing::occupancy::grown(area, by)
}

/// True when two boxes share a point.
fn touches(a: &Bounds2, b: &Bounds2) -> bool {
    (0..2).all(|i| a.low[i] <= b.high[i] && b.low[i] <= a.high[i])
}

/// The part of an area inside a limit, which it touches.
fn within(area: &Bounds2, limit: &Bounds2) -> Bounds2 {
    Bounds2 {
        low: area.low.sup(&limit.low).inf(&limit.high),
        high: area.high.inf(&limit.high).sup(&limit.low),
    }
}

/// A box made larger until it touches an area.
fn reaching(shown: &Bounds2, area: &Bounds2) -> Bounds2 {
    Bounds2 {
        low: shown.low.inf(&area.high),
        high: shown.high.sup(&area.low),
    }
}

/// The edges of an area as far as they run inside a limit; those on the limit itself are left out.
fn edges(area: &Bounds2, limit: &Bounds2) -> Vec<[Point2; 2]> {
    let seen = within(area, limit);
    let at = |axis: usize, value: f64, other: f64| {
        let mut p = Point2::origin();
        p[axis] = value;
        p[1 - axis] = other;
        p
    };
    let mut found = Vec::new();
    for axis in 0..2 {
        let ends = (seen.low[1 - axis], seen.high[1 - axis]);
        for value in [area.low[axis], area.high[axis]] {
            if value > limit.low[axis] && value < limit.high[axis] && ends.0 < ends.1 {
                found.push([at(axis, value, ends.0), at(axis, value, ends.1)]);
            }
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    fn area(x0: f64, y0: f64, x1: f64, y1: f64) -> Bounds2 {
        Bounds2 {
            low: Point2::new(x0, y0),
            high: Point2::new(x1, y1),
        }
    }

    #[test]
    fn a_long_wall_is_drawn_as_far_as_the_plan_goes() {
        // A wall 6 m long and 0.3 m thick behind a plan of 3 m by 1.2 m: its two long edges as long as the plan, no ends.
        let edges = edges(
            &area(-2000.0, 700.0, 4000.0, 1000.0),
            &area(-300.0, -400.0, 2700.0, 1200.0),
        );
        assert_eq!(edges.len(), 2);
        assert!(
            edges
                .iter()
                .all(|[a, b]| ((b - a).norm() - 3000.0).abs() < 1e-9)
        );
    }
}
