//! What the checks of the pour have in common: when it is, and what weather is told for it.

use crate::diagnostics::{Place, Verdict};
use crate::rules::{Answers, Limit, Subject};
use crate::site::pour::{Fitness, HourPlan, PourPlan, Window};
use crate::units::Unit;

/// The pour and the hours of the forecast in it.
pub(in crate::rules) struct Pouring<'a> {
    /// The pour.
    pub plan: &'a PourPlan,
    /// From the first batch to the last trowel pass.
    pub window: &'a Window,
    /// The hours in it; at least one.
    pub hours: Vec<&'a HourPlan>,
    /// The key that says when.
    pub place: &'a Place,
}

impl Pouring<'_> {
    /// A verdict; what passes in the hours that are told is not checked while others are not.
    pub(in crate::rules) fn verdict(&self, fitness: Fitness) -> Verdict {
        match fitness {
            Fitness::Not => Verdict::Fail,
            _ if !self.window.is_foretold => Verdict::NotChecked,
            Fitness::Care => Verdict::Caution,
            Fitness::Fit => Verdict::Pass,
        }
    }

    /// What is added where hours are missing.
    pub(in crate::rules) fn untold(&self) -> &'static str {
        if self.window.is_foretold {
            ""
        } else {
            "; the forecast lacks hours of the pour"
        }
    }
}

/// The pour; `None` where its moment or its weather is not told, which is answered.
pub(in crate::rules) fn pouring<'a>(
    subject: &'a Subject,
    answers: &mut Answers,
) -> Option<Pouring<'a>> {
    let design = subject.design();
    let pour = &design.pour;
    if pour.forecast.is_none() {
        answers.missing(
            &pour.place,
            "forecast",
            "what weather the counter is placed in",
        );
        return None;
    }
    let Some(at) = &pour.at else {
        answers.missing(&pour.place, "at", "when the counter is placed");
        return None;
    };
    let plan = subject.pour();
    let window = plan.window.as_ref()?;
    let hours: Vec<&HourPlan> = window
        .hours
        .iter()
        .filter_map(|i| plan.hours.get(*i))
        .collect();
    if hours.is_empty() {
        let found = "the forecast has no hour of the pour";
        let answer = answers.say(Verdict::NotChecked, &at.place, found);
        answer.hint("pour within the forecast, or renew it");
        return None;
    }
    Some(Pouring {
        plan,
        window,
        hours,
        place: &at.place,
    })
}

/// A limit in degrees Celsius.
pub(in crate::rules) const fn celsius(
    (name, usual): (&'static str, f64),
    what: &'static str,
    source: &'static str,
) -> Limit {
    Limit {
        name,
        what,
        usual,
        unit: Unit::Temperature,
        source,
    }
}

/// A limit in hours.
pub(in crate::rules) const fn hours_of(
    (name, usual): (&'static str, f64),
    what: &'static str,
    source: &'static str,
) -> Limit {
    Limit {
        name,
        what,
        usual,
        unit: Unit::Time,
        source,
    }
}
