//! The pour in a few lines.

use super::spelling::Told;
use crate::catalog::Need;
use crate::plan::Plan;
use crate::site::pour::{
    Fitness, HourPlan, Mixed, PourPlan, Stretch, UNCERTAINTY, sooner, stretches,
};
use crate::units::{Moment, TimeSpan, Unit, Volume};

/// What a person needs to know, in the order of the day.
pub(super) fn facts(plan: &Plan, pour: &PourPlan, told: Told) -> Vec<(String, String)> {
    let mut facts: Vec<(&str, Option<String>)> = vec![
        ("placing begins", Some(begins(pour))),
        ("the hours of the pour", verdict(pour)),
        ("what helps", helps(pour, told)),
        ("evaporation at worst", drying(pour, told)),
        ("concrete leaves the mixer", concrete(plan, pour, told)),
        ("may be placed", Some(may(pour))),
    ];
    facts.extend(slab(plan, pour, told));
    facts.push(("crew", Some(crew(plan))));
    let with = facts.into_iter();
    with.filter_map(|(what, said)| Some((what.to_owned(), said?)))
        .collect()
}

fn begins(pour: &PourPlan) -> String {
    pour.start.map_or_else(
        || "not said: write pour.at, or --at".to_owned(),
        Moment::spell,
    )
}

/// Whether the hours from the first batch to the last trowel pass are fit.
fn verdict(pour: &PourPlan) -> Option<String> {
    let window = pour.window.as_ref()?;
    let until = format!(
        "{} to {}",
        window.from.spell_time(),
        window.finished.spell_time()
    );
    let Some(worst) = pour.worst() else {
        return Some(format!("{until}: no forecast, not judged"));
    };
    let why = Told::against(worst);
    let name = worst.fitness.name();
    Some(if why.is_empty() {
        format!("{until}: {name}")
    } else {
        format!("{until}: {name} ({why})")
    })
}

fn helps(pour: &PourPlan, told: Told) -> Option<String> {
    let worst = pour.worst().filter(|w| w.fitness > Fitness::Fit)?;
    let measures = told.helps(worst);
    let waiting = worst.next.map(|n| format!("or wait until {}", n.spell()));
    let all: Vec<String> = [Some(measures).filter(|m| !m.is_empty()), waiting]
        .into_iter()
        .flatten()
        .collect();
    (!all.is_empty()).then(|| all.join("; "))
}

/// The greatest evaporation of the pour, with its band and its limit.
fn drying(pour: &PourPlan, told: Told) -> Option<String> {
    let limits = pour.limits?;
    let own = pour.window.iter().flat_map(|w| &w.hours);
    let own = own.filter_map(|i| pour.hours.get(*i));
    let worst: &HourPlan = own.max_by(|a, b| a.evaporation.total_cmp(&b.evaporation))?;
    let spell = |kg: f64| {
        format!(
            "{:.*}",
            if told.imperial() { 3 } else { 2 },
            told.drying(kg)
        )
    };
    let e = worst.evaporation;
    Some(format!(
        "{} {} from {} on, somewhere between {} and {}; limit {}",
        spell(e),
        told.rate(),
        worst.hour.at.spell_time(),
        spell(e * (1.0 - UNCERTAINTY)),
        spell(e * (1.0 + UNCERTAINTY)),
        spell(limits.evaporation)
    ))
}

fn concrete(plan: &Plan, pour: &PourPlan, told: Told) -> Option<String> {
    let limits = pour.limits?;
    let first = pour.window.as_ref()?.hours.first()?;
    let hour = pour.hours.get(*first)?;
    let design = &plan.design.pour;
    let bags = design.bags.as_ref().map_or_else(
        || "bags as warm as the air".to_owned(),
        |b| format!("bags at {}", b.spell(told.0)),
    );
    Some(format!(
        "at {} ({bags}, water at {}); limits {} and {}",
        hour.concrete.spell(told.0),
        design.water.spell(told.0),
        limits.coldest.spell(told.0),
        limits.hottest.spell(told.0)
    ))
}

/// When concrete may be placed, in stretches of hours; the first ones.
fn may(pour: &PourPlan) -> String {
    const MOST: usize = 5;
    if pour.hours.is_empty() {
        return "not known: there is no forecast".to_owned();
    }
    // From the day of the pour on, where the forecast knows it.
    let last = pour.hours.last().map(|h| h.hour.at);
    let day = pour
        .start
        .filter(|s| Some(*s) <= last)
        .map(Moment::midnight);
    let may: Vec<Stretch> = stretches(&pour.hours)
        .into_iter()
        .filter(|s| s.fitness != Fitness::Not && Some(s.to) > day)
        .collect();
    if may.is_empty() {
        return "in no hour of the forecast".to_owned();
    }
    let one = |s: &Stretch| {
        let care = if s.fitness == Fitness::Care {
            " with care"
        } else {
            ""
        };
        let to = if s.to.midnight() == s.from.midnight() {
            s.to.spell_time()
        } else {
            s.to.spell()
        };
        format!("{} to {to}{care}", s.from.spell())
    };
    let mut all: Vec<String> = may.iter().take(MOST).map(one).collect();
    if may.len() > MOST {
        all.push(format!("and {} more times", may.len() - MOST));
    }
    all.join("; ")
}

/// Batches, their time and how long the mix lasts.
fn slab(plan: &Plan, pour: &PourPlan, told: Told) -> Vec<(&'static str, Option<String>)> {
    let Some(placing) = pour.placing else {
        return vec![(
            "batches",
            Some("not known: nothing in supplies serves the slab".to_owned()),
        )];
    };
    let design = &plan.design.pour;
    let mixed = pour.mixed.iter().find(|m| m.need == Need::Concrete);
    let mixers = match design.mixers.value {
        1 => "one mixer".to_owned(),
        n => format!("{n} mixers"),
    };
    let batch = mixed.map_or("", |m| m.batch.as_str());
    let batches = format!(
        "{} of {batch}, {mixers}, {} each: {} from the first to the last",
        placing.batches,
        design.batch_time.spell(),
        placing.time.spell()
    );
    vec![
        ("batches", Some(batches)),
        ("placed an hour", placing.rate.map(|r| volume(r, told))),
        ("mix workable", workable(plan, pour)),
        ("bags", mixed.map(bags)),
    ]
}

fn volume(volume: Volume, told: Told) -> String {
    if told.imperial() {
        format!("{:.1} cu ft", volume.in_cubic_feet())
    } else {
        format!("{:.0} L", volume.mm3() / 1.0e6)
    }
}

/// How long the mix can be worked, and when the first of it has set.
fn workable(plan: &Plan, pour: &PourPlan) -> Option<String> {
    let limits = pour.limits?;
    let first = pour.window.as_ref().and_then(|w| w.hours.first());
    let warm = first.and_then(|i| pour.hours.get(*i)).map(|h| h.concrete);
    let warm = warm.unwrap_or(crate::site::pour::REFERENCE);
    let retarder = plan.design.pour.retarder;
    let long = |t: TimeSpan| sooner(t + retarder, warm).spell();
    Some(format!(
        "{}; begins to set after {}",
        long(limits.working),
        long(limits.initial_set)
    ))
}

fn bags(mixed: &Mixed) -> String {
    let spare = mixed.count.saturating_sub(mixed.net);
    format!(
        "{} on site, {spare} of them spare; two buckets to a mixer, one for water, one to rinse tools",
        mixed.count
    )
}

/// Who does what.
fn crew(plan: &Plan) -> String {
    let pour = &plan.design.pour;
    let what = match pour.crew.value {
        1 => "one mixes, carries, places and finishes alone",
        2 => "one mixes and carries, one places and screeds",
        3 => "one mixes, one carries, one places and screeds",
        _ => "one to a mixer, one carries bags and water, the others place, screed and float",
    };
    let count = match pour.crew.value {
        1 => "1 person".to_owned(),
        n => format!("{n} people"),
    };
    let each = Unit::Time.spell(pour.batch_time.in_hours(), plan.design.project.units);
    format!("{count}: {what}; {each} from one batch to the next")
}
