//! The template's lines, read from the plan.

use super::scene::{Kind, Scene, Spot};
use super::trace::Trace;
use crate::geometry::{Bounds2, Outline, Point2, Segment, Vector2};
use crate::plan::{CounterCutout, Cutout, Plan, RunPlan};
use crate::units::Length;

/// A slab edge this near a cutout is shown with it, its distance drawn in full; farther ones are only named.
const NEAR: f64 = 250.0;

/// How far centre lines pass the cutout or its flange.
const PAST: f64 = 15.0;

/// The whole counter.
pub(super) fn whole(plan: &Plan) -> Scene {
    let mut scene = Scene::default();
    let holes: Vec<_> = holes(plan).collect();
    slab(&mut scene, plan, &holes, None);
    for hole in &holes {
        hole.draw(&mut scene);
    }
    scene
}

/// Each cutout by itself, with the edges of the slab that are near it, and its appliance's name.
pub(super) fn cutouts(plan: &Plan) -> impl Iterator<Item = (&str, Scene)> {
    holes(plan).map(|hole| {
        let mut scene = Scene::default();
        let region = hole.region();
        slab(&mut scene, plan, std::slice::from_ref(&hole), Some(region));
        hole.draw(&mut scene);
        (hole.name, scene)
    })
}

fn holes(plan: &Plan) -> impl Iterator<Item = Hole<'_>> {
    plan.counter
        .cutouts
        .iter()
        .filter_map(|cutout| Hole::of(plan, cutout))
}

/// The slab's edge and the turndown's inner line, all of them or what lies in a region. Where a cutout is open to the
/// front, its own line is the slab's edge.
fn slab(scene: &mut Scene, plan: &Plan, holes: &[Hole], region: Option<Bounds2>) {
    let mut add = |kind, trace: Trace, label: &str| {
        let parts = region.map_or_else(|| vec![trace.clone()], |r| trace.inside(&r));
        for part in parts {
            scene.add(kind, part, label.to_owned());
        }
    };
    for line in &plan.counter.turndown {
        let trace = Trace {
            points: line.vertices.clone(),
            closed: line.closed,
        };
        add(Kind::Turndown, trace, "turndown, inner line");
    }
    let notch = |s: &Segment| holes.iter().any(|hole| hole.notches(s));
    for stretch in Trace::without(&plan.counter.outline, notch) {
        add(Kind::Slab, stretch, "slab edge");
    }
}

/// A cutout with what is needed to draw it.
struct Hole<'p> {
    plan: &'p Plan,
    run: &'p RunPlan,
    cut: &'p Cutout,
    shape: &'p CounterCutout,
    name: &'p str,
    flange: f64,
}

/// One of the four ways out of a cutout.
struct Way {
    /// Where it leaves the cutout.
    from: Point2,
    /// The direction out.
    out: Vector2,
    /// How far it is to the slab's edge.
    reach: f64,
}

impl<'p> Hole<'p> {
    fn of(plan: &'p Plan, shape: &'p CounterCutout) -> Option<Self> {
        let appliance = plan.design.appliances.get(shape.appliance)?;
        Some(Self {
            plan,
            run: plan.runs.get(shape.run)?,
            cut: plan
                .cutouts
                .iter()
                .find(|c| c.appliance == shape.appliance)?,
            shape,
            name: &appliance.name,
            flange: appliance.flange.mm().max(0.0),
        })
    }

    fn spell(&self, mm: f64) -> String {
        self.plan
            .design
            .project
            .units
            .spell(Length::millimetres(mm))
    }

    fn draw(&self, scene: &mut Scene) {
        let name = self.name;
        if self.flange > 0.0 {
            self.edge(
                scene,
                Kind::Flange,
                &self.shape.flange,
                &format!("{name}: edge of flange"),
            );
        }
        self.centre_lines(scene);
        self.sizes(scene);
        self.ways().iter().for_each(|way| self.distance(scene, way));
        self.radii(scene);
        self.edge(
            scene,
            Kind::Cut,
            &self.shape.outline,
            &format!("{name}: cut line"),
        );
    }

    /// A cutout's or flange's edge, open at the front where the counter has none there.
    fn edge(&self, scene: &mut Scene, kind: Kind, outline: &Outline, label: &str) {
        let motion = self.run.motion().inverse();
        let at_front = |p: Point2| self.cut.open && (motion * p).y < self.cut.v0 + 1e-6;
        for stretch in Trace::without(outline, |s: &Segment| at_front(s.from) && at_front(s.to)) {
            scene.add(kind, stretch, label.to_owned());
        }
    }

    /// True when a side of the slab is a side of this cutout, which is open to the front.
    fn notches(&self, side: &Segment) -> bool {
        let motion = self.run.motion().inverse();
        let c = self.cut;
        let on = |p: Point2| {
            let p = motion * p;
            (c.u0 - 1e-6..=c.u1 + 1e-6).contains(&p.x) && (c.v0 - 1e-6..=c.v1 + 1e-6).contains(&p.y)
        };
        c.open && on(side.from) && on(side.to)
    }

    fn centre_lines(&self, scene: &mut Scene) {
        let (c, past) = (self.cut, self.flange + PAST);
        let (u, v) = (f64::midpoint(c.u0, c.u1), f64::midpoint(c.v0, c.v1));
        let front = if c.open { c.v0 } else { c.v0 - past };
        for (from, to) in [
            ((u, front), (u, c.v1 + past)),
            ((c.u0 - past, v), (c.u1 + past, v)),
        ] {
            let trace = Trace::straight(self.run.point(from.0, from.1), self.run.point(to.0, to.1));
            scene.add(Kind::Centre, trace, format!("{}: centre line", self.name));
        }
    }

    /// Width and depth of the cutout, drawn inside it.
    fn sizes(&self, scene: &mut Scene) {
        let c = self.cut;
        let (width, depth) = (c.u1 - c.u0, c.v1 - c.v0);
        let inset = |size: f64| (c.radius + 12.0).min(size * 0.4);
        let point = |u, v| self.run.point(u, v);
        let v = if c.open {
            c.v1 - inset(depth)
        } else {
            c.v0 + inset(depth)
        };
        scene.measure(
            point(c.u0, v),
            point(c.u1, v),
            self.spell(width),
            (true, true),
        );
        let u = c.u0 + inset(width);
        scene.measure(
            point(u, c.v0),
            point(u, c.v1),
            self.spell(depth),
            (!c.open, true),
        );
    }

    /// The centres of the corners' radii.
    fn radii(&self, scene: &mut Scene) {
        let (c, r) = (self.cut, self.cut.radius);
        if r <= 0.0 {
            return;
        }
        let near = (!c.open).then_some(c.v0 + r);
        for v in near.into_iter().chain([c.v1 - r]) {
            for u in [c.u0 + r, c.u1 - r] {
                scene.spots.push(Spot {
                    at: self.run.point(u, v),
                    label: format!("R {}", self.spell(r)),
                });
            }
        }
    }

    /// The ways out to the slab's edges: left, right, back and front.
    fn ways(&self) -> Vec<Way> {
        let c = self.cut;
        // Beside the centre line, so that both can be read.
        let (u, v) = (
            f64::midpoint(c.u0, c.u1) + 22.0,
            f64::midpoint(c.v0, c.v1) + 22.0,
        );
        let along = [
            (c.u0, v, -self.run.along),
            (c.u1, v, self.run.along),
            (u, c.v1, self.run.away),
        ];
        let front = (!c.open).then_some((u, c.v0, -self.run.away));
        along
            .into_iter()
            .chain(front)
            .filter_map(|(u, v, out)| {
                let from = self.run.point(u, v);
                let reach = reach(&self.plan.counter.outline, from, out)?;
                Some(Way { from, out, reach })
            })
            .collect()
    }

    fn distance(&self, scene: &mut Scene, way: &Way) {
        let far = way.reach > NEAR;
        let to = way.from + way.out * if far { 30.0 } else { way.reach };
        let spelt = self.spell(way.reach);
        let label = if far {
            format!("{spelt} to slab edge")
        } else {
            spelt
        };
        scene.measure(way.from, to, label, (!far, true));
    }

    /// The box round the cutout, its flange and the slab edges near it.
    fn region(&self) -> Bounds2 {
        let mut region = self
            .shape
            .outline
            .bounds()
            .union(self.shape.flange.bounds());
        for way in self.ways().iter().filter(|w| w.reach <= NEAR) {
            let end = way.from + way.out * way.reach;
            region = region.union(Bounds2 {
                low: end,
                high: end,
            });
        }
        let past = Vector2::new(PAST, PAST);
        Bounds2 {
            low: region.low - past,
            high: region.high + past,
        }
    }
}

/// How far it is from a point to an outline in a direction; `None` when it never meets it.
fn reach(outline: &Outline, from: Point2, out: Vector2) -> Option<f64> {
    let met = outline.segments().flat_map(|s| meetings(&s, from, out));
    met.filter(|t| *t > 1e-3).min_by(f64::total_cmp)
}

/// The distances along a ray at which it meets a piece.
fn meetings(segment: &Segment, from: Point2, out: Vector2) -> Vec<f64> {
    let side = Vector2::new(-out.y, out.x);
    let Some(arc) = segment.arc() else {
        let (a, b) = (
            (segment.from - from).dot(&side),
            (segment.to - from).dot(&side),
        );
        let f = a / (a - b);
        let hit = segment.from + (segment.to - segment.from) * f;
        return if (0.0..=1.0).contains(&f) {
            vec![(hit - from).dot(&out)]
        } else {
            Vec::new()
        };
    };
    let centre = arc.centre - from;
    let (along, off) = (centre.dot(&out), centre.dot(&side));
    let half = (arc.radius * arc.radius - off * off).sqrt();
    [along - half, along + half]
        .into_iter()
        .filter(|t| {
            let spoke = from + out * *t - arc.centre;
            let turned = (spoke.y.atan2(spoke.x) - arc.start) * arc.sweep.signum();
            turned.rem_euclid(std::f64::consts::TAU) <= arc.sweep.abs() + 1e-9
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_ray_meets_straight_sides_and_rounded_corners() {
        let outline = Outline::rounded_rectangle(0.0, 0.0, 100.0, 60.0, 10.0);
        let at = |x, y, dx, dy| reach(&outline, Point2::new(x, y), Vector2::new(dx, dy));
        assert!((at(40.0, 30.0, -1.0, 0.0).unwrap() - 40.0).abs() < 1e-9);
        // At y = 4 the corner's circle about (10, 10) is at x = 10 − 8 = 2.
        assert!((at(40.0, 4.0, -1.0, 0.0).unwrap() - 38.0).abs() < 1e-9);
        assert_eq!(at(40.0, 70.0, 0.0, 1.0), None);
    }
}
