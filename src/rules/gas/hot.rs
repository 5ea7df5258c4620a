//! Appliances that give off heat, and how far what can burn must stand from them.

use super::clearance::{Block, Gaps, Toward};
use crate::design::{Appliance, ObjectKind, Placed, SiteObject};
use crate::diagnostics::Verdict;
use crate::geometry::{Bounds3, Point3};
use crate::plan::{BodyOf, Plan, RunPlan};
use crate::rules::{Answers, Limit, Subject};
use crate::units::{Length, Unit};

/// How far what can burn stands from an appliance whose instructions are not known.
pub(super) const FROM_WHAT_BURNS: Limit = Limit {
    name: "heat-combustible",
    what: "how far what can burn stands behind, beside or below an appliance whose own figure the file does not give",
    usual: 609.6,
    unit: Unit::Length,
    source: "common practice; a listed appliance goes in by its own instructions",
};

/// How far above the counter what can burn must be, where an appliance's instructions are not known.
pub(super) const OVERHEAD: Limit = Limit {
    name: "heat-overhead",
    what: "how far above the counter a roof or beam that can burn is, where the file does not give the appliance's own figure",
    usual: 1524.0,
    unit: Unit::Length,
    source: "common practice; many instructions allow nothing that can burn above at all",
};

/// Where an own figure comes from.
pub(super) const OWN: &str = "the appliance's own instructions, as the file gives them";

/// An appliance that gives off heat, where it stands.
#[derive(Debug)]
pub(super) struct Hot<'a> {
    pub(super) appliance: &'a Appliance,
    pub(super) run: usize,
    pub(super) body: Block,
}

/// What is asked on one side.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Asked {
    pub(super) distance: f64,
    /// True when it is the appliance's own figure.
    pub(super) own: bool,
    pub(super) source: String,
}

/// All appliances that give off heat.
pub(super) fn hot(plan: &Plan) -> Vec<Hot<'_>> {
    let one = |b: &crate::plan::Body| {
        let BodyOf::Appliance(i) = b.of else {
            return None;
        };
        let appliance = plan.design.appliances.get(i).filter(|a| a.cooks())?;
        let body = Block {
            u: b.u,
            v: b.v,
            z: b.z,
        };
        Some(Hot {
            appliance,
            run: b.run,
            body,
        })
    };
    plan.bodies.iter().filter_map(one).collect()
}

/// A site object as a run sees it.
pub(super) fn seen(run: &RunPlan, object: &SiteObject) -> Block {
    let world = Bounds3 {
        low: Point3::from(object.low),
        high: Point3::from(object.high),
    };
    Block::seen_from(run, &world)
}

impl Hot<'_> {
    /// The appliance's own figure for one side. In front the figure for its sides is taken: instructions give none.
    fn own(&self, side: Toward) -> Option<&Placed<Length>> {
        let c = &self.appliance.rating.clearance;
        match side {
            Toward::Beside | Toward::Before => c.sides.as_ref(),
            Toward::Behind => c.back.as_ref(),
            Toward::Above => c.above.as_ref(),
            Toward::Below => c.below.as_ref(),
        }
    }

    /// The key of that figure below `clearance`.
    fn key(side: Toward) -> &'static str {
        match side {
            Toward::Beside | Toward::Before => "sides",
            Toward::Behind => "back",
            Toward::Above => "above",
            Toward::Below => "below",
        }
    }

    /// What is asked on one side.
    pub(super) fn asked(&self, subject: &Subject, side: Toward) -> Asked {
        if let Some(own) = self.own(side) {
            return Asked {
                distance: own.mm(),
                own: true,
                source: OWN.to_owned(),
            };
        }
        let limit = match side {
            Toward::Above => &OVERHEAD,
            _ => &FROM_WHAT_BURNS,
        };
        let bound = subject.bound(limit);
        Asked {
            distance: bound.value,
            own: false,
            source: bound.source,
        }
    }

    /// How it turns out for something that can burn: on which side it is farthest off, and the verdict.
    pub(super) fn verdict(&self, subject: &Subject, gaps: &Gaps) -> (Toward, Verdict) {
        let (side, share) = gaps.farthest(|t| self.asked(subject, t).distance);
        let verdict = if share < 1.0 - 1e-9 {
            Verdict::Fail
        } else if self.asked(subject, side).own {
            Verdict::Pass
        } else {
            Verdict::Caution
        };
        (side, verdict)
    }

    /// How far off the slice of an object is that keeps the least of what is asked.
    fn worst(&self, subject: &Subject, run: &RunPlan, object: &SiteObject) -> Option<Gaps> {
        let slices = object.stands.slices(SLICES);
        let gaps = slices.map(|s| Gaps::between(&self.body, &Block::seen_from(run, &s)));
        let share = |gaps: &Gaps| gaps.farthest(|t| self.asked(subject, t).distance).1;
        gaps.reduce(|worst, next| {
            if share(&next) < share(&worst) {
                next
            } else {
                worst
            }
        })
    }

    /// Answers for one thing that can burn or may be able to.
    pub(super) fn answer(
        &self,
        subject: &Subject,
        answers: &mut Answers,
        object: &SiteObject,
        gaps: &Gaps,
    ) {
        let about = format!("{} and {}", self.appliance.name, object.name);
        let (side, verdict) = self.verdict(subject, gaps);
        let name = &self.appliance.name;
        let found = if gaps.meet() {
            format!("'{}' takes the place of '{name}' itself", object.name)
        } else {
            let gap = subject.mm(gaps.toward(side));
            format!("'{}' is {gap} {} '{name}'", object.name, side.name())
        };
        if object.combustible.is_none() && verdict != Verdict::Pass {
            let unknown = format!("{found}, and whether it can burn is not known");
            answers
                .missing(&object.place, "combustible", unknown)
                .about(about);
            return;
        }
        let asked = self.asked(subject, side);
        let key = Self::key(side);
        let hint = match verdict {
            Verdict::Fail if asked.own => {
                "move the appliance, or shield or replace what can burn as its instructions say"
                    .to_owned()
            }
            Verdict::Fail => format!(
                "move the appliance, or write 'clearance.{key}' from its own instructions if they allow less"
            ),
            Verdict::Caution => {
                format!(
                    "write 'clearance.{key}' from the appliance's own instructions: this figure is only common practice"
                )
            }
            _ => String::new(),
        };
        answers
            .say(verdict, &self.appliance.place, found)
            .about(about)
            .limit(
                format!("at least {}", subject.mm(asked.distance)),
                asked.source,
            )
            .hint(hint);
    }
}

/// What gives off heat and the objects of the site, or the answer that there is none or they are not known.
pub(super) fn hot_and_objects<'a>(
    subject: &Subject<'a>,
    answers: &mut Answers,
    unknown: &str,
) -> Option<(Vec<Hot<'a>>, &'a [SiteObject])> {
    let plan = subject.plan;
    let all = hot(plan);
    if all.is_empty() {
        answers.nothing("no appliance gives off heat");
        return None;
    }
    let site = &plan.design.site;
    if site.objects.is_none() {
        answers.missing(&site.place, "objects", unknown);
    }
    Some((all, site.objects.as_ref()?.value.as_slice()))
}

/// Answers for one appliance about every object that may burn and stands as `stands` asks; true when there was one.
pub(super) fn about_objects(
    subject: &Subject,
    answers: &mut Answers,
    h: &Hot,
    objects: &[SiteObject],
    stands: impl Fn(&Gaps) -> bool,
) -> bool {
    let mut said = false;
    for object in objects.iter().filter(|o| may_burn(o)) {
        let run = &subject.plan.runs[h.run];
        let gaps = Gaps::between(&h.body, &seen(run, object));
        if stands(&gaps) {
            said = true;
            let worst = h.worst(subject, run, object).unwrap_or(gaps);
            h.answer(subject, answers, object, &worst);
        }
    }
    said
}

/// What leans is looked at in so many slices.
const SLICES: u32 = 24;

/// True for what can burn, or may.
pub(super) fn may_burn(object: &SiteObject) -> bool {
    object.kind != ObjectKind::Walkway && object.combustible.as_ref().is_none_or(|c| c.value)
}
