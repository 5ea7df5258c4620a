//! What opens in the faces, the room it sweeps, and what stands in its way.

use super::swept::Swept;
use crate::design::{Hinge, Opening, OpeningKind};
use crate::geometry::Bounds2;
use crate::plan::{Face, FaceOpening, Plan, SideKind};
use crate::rules::around::{self, Around, finished, seen_from, shared};
use crate::rules::{Answers, Bound, Subject};

/// A leaf or a drawer, and the room that it sweeps.
#[derive(Clone, Debug)]
pub(super) struct Opens<'a> {
    /// The opening it fills.
    pub opening: &'a Opening,
    /// The number of its face.
    pub face: usize,
    /// The room in plan.
    pub swept: Swept,
    /// From where to where above the datum.
    pub z: (f64, f64),
}

/// Every leaf that turns on a hinge: of doors, hatches and appliances below the counter.
pub(super) fn leaves(plan: &Plan) -> Vec<Opens<'_>> {
    holes(plan)
        .filter(|(_, _, o)| {
            matches!(
                o.kind,
                OpeningKind::Door | OpeningKind::Hatch | OpeningKind::Undercounter
            )
        })
        .flat_map(|(i, hole, opening)| {
            let swept = swept_by_leaves(plan, &plan.faces[i], hole, opening);
            swept.into_iter().map(move |swept| Opens {
                opening,
                face: i,
                swept,
                z: (hole.z0, hole.z1),
            })
        })
        .collect()
}

/// Every stack of drawers, drawn out as far as it comes.
pub(super) fn drawers(plan: &Plan) -> Vec<Opens<'_>> {
    holes(plan)
        .filter(|(_, _, o)| o.kind == OpeningKind::Drawer)
        .map(|(i, hole, opening)| Opens {
            opening,
            face: i,
            swept: in_front(plan, &plan.faces[i], hole, opening.hardware.travel.mm()),
            z: (hole.z0, hole.z1),
        })
        .collect()
}

fn holes(plan: &Plan) -> impl Iterator<Item = (usize, &FaceOpening, &Opening)> {
    // An open front has no kind: it fills its hole for good.
    plan.faces
        .iter()
        .enumerate()
        .flat_map(|(i, f)| f.openings.iter().map(move |h| (i, h)))
        .filter(|(_, h)| h.kind.is_some())
        .filter_map(|(i, h)| Some((i, h, plan.design.openings.get(h.index)?)))
}

fn swept_by_leaves(plan: &Plan, face: &Face, hole: &FaceOpening, opening: &Opening) -> Vec<Swept> {
    let width = hole.s1 - hole.s0;
    let out = finished(plan, face);
    let leaf = |left: bool, width: f64| Swept::Quarter {
        hinge: face.point(if left { hole.s0 } else { hole.s1 }, out),
        shut: if left { face.along } else { -face.along },
        open: face.outward,
        width,
    };
    match opening.hardware.hinge.value {
        Hinge::Left => vec![leaf(true, width)],
        Hinge::Right => vec![leaf(false, width)],
        Hinge::Pair => vec![leaf(true, width / 2.0), leaf(false, width / 2.0)],
        Hinge::Bottom | Hinge::Top => vec![in_front(plan, face, hole, hole.z1 - hole.z0)],
        Hinge::None => Vec::new(),
    }
}

/// A box as wide as an opening that reaches so far in front of its face.
fn in_front(plan: &Plan, face: &Face, hole: &FaceOpening, reach: f64) -> Swept {
    let out = finished(plan, face);
    let (a, b) = (face.point(hole.s0, out), face.point(hole.s1, out + reach));
    Swept::Box(Bounds2 {
        low: a.inf(&b),
        high: a.sup(&b),
    })
}

impl Opens<'_> {
    /// What stands nearest to the room it sweeps, at its height and in front of its face, and how far off.
    pub(super) fn nearest<'b>(
        &self,
        plan: &Plan,
        around: &'b [Around],
    ) -> Option<(f64, &'b Around)> {
        let face = &plan.faces[self.face];
        let out = finished(plan, face);
        around
            .iter()
            .filter(|a| a.face != Some(self.face) && shared(a.z, self.z) > 1e-6)
            .filter(|a| seen_from(face, &a.plan).out.1 > out + 1e-6)
            .map(|a| (self.swept.distance(&a.plan), a))
            .min_by(|a, b| a.0.total_cmp(&b.0))
    }

    /// By how much its top passes the underside of the counter that hangs over it.
    pub(super) fn past_counter_edge(&self, plan: &Plan) -> f64 {
        let over = plan
            .counter
            .sides
            .iter()
            .filter(|s| s.face == self.face && s.kind == SideKind::Exposed);
        let underside = over
            .filter(|s| s.overhang > 0.0)
            .map(|s| {
                plan.levels.slab_bottom
                    - if s.dropped {
                        plan.counter.turndown_depth
                    } else {
                        0.0
                    }
            })
            .fold(f64::INFINITY, f64::min);
        self.z.1 - underside
    }

    /// It in messages.
    fn words(&self) -> String {
        let name = &self.opening.name;
        match self.opening.kind {
            OpeningKind::Drawer => format!("'{name}' drawn out"),
            _ => format!("the leaf of '{name}'"),
        }
    }

    /// What would clear its way.
    fn remedy(&self) -> &'static str {
        match self.opening.kind {
            OpeningKind::Drawer => "move it away, or choose one that comes out less far",
            _ => "move it away, hinge it on its other side, or make it narrower",
        }
    }

    /// True when both cannot be open at once.
    pub(super) fn meets(&self, other: &Opens) -> bool {
        self.opening.name != other.opening.name
            && shared(self.z, other.z) > 1e-6
            && self.swept.meets(&other.swept, 1.0)
    }
}

/// Says whether a leaf or a drawer opens clear of what stands around.
pub(super) fn judge(
    subject: &Subject,
    answers: &mut Answers,
    what: &Opens,
    around: &[Around],
    clear: &Bound,
) {
    let name = &what.opening.name;
    let place = &what.opening.place;
    let what_opens = what.words();
    let into = what.past_counter_edge(subject.plan);
    if into > 1e-6 {
        let found = format!(
            "{what_opens} strikes the edge of the counter, which hangs {} lower than its top",
            subject.mm(into)
        );
        let lower = format!("lower its top by {}", subject.mm(into));
        answers.fail(place, found).about(name).hint(lower);
        return;
    }
    let Some((distance, nearest)) = what.nearest(subject.plan, around) else {
        let found = format!("nothing stands in front of {what_opens}");
        answers.pass(place, found).about(name);
        return;
    };
    let move_it = what.remedy();
    if distance <= 1e-6 {
        let found = format!("{what_opens} strikes {}", nearest.name);
        answers
            .fail(place, found)
            .about(name)
            .at_least(clear)
            .hint(move_it);
        return;
    }
    let found = format!(
        "{what_opens} passes {} with {} to spare",
        nearest.name,
        subject.mm(distance)
    );
    if clear.is_reached_by(distance) {
        answers.pass(place, found).about(name).at_least(clear);
    } else {
        let answer = answers.caution(place, found).about(name);
        answer.at_least(clear).hint(move_it);
    }
}

/// Everything that can stand in the way; says so where the file leaves the site out.
pub(super) fn in_the_way(subject: &Subject, answers: &mut Answers) -> Vec<Around> {
    let mut around = around::faces(subject.plan);
    if let Some(objects) = around::objects(subject.plan) {
        around.extend(objects);
    } else {
        let place = around::site_group(subject.design());
        answers.missing(
            &place,
            "objects",
            "what stands around the island is not known",
        );
    }
    around
}

/// Says which of some other things cannot be open at the same time.
pub(super) fn together(answers: &mut Answers, what: &Opens, others: &[Opens]) {
    let mut said: Vec<&str> = Vec::new();
    for other in others.iter().filter(|o| what.meets(o)) {
        let (name, second) = (what.opening.name.as_str(), other.opening.name.as_str());
        if said.contains(&second) {
            continue;
        }
        said.push(second);
        let what_opens = what.words();
        let found = format!("{what_opens} and '{second}' cannot be open at the same time");
        let answer = answers.caution(&what.opening.place, found).about(name);
        answer.hint("move one of them out of the corner, or hinge a leaf on its other side");
    }
}
