//! Single steps of the work otherwise than is usual.

use super::amounts::Range;
use super::gather::Gather;
use crate::catalog::work::{work_step, work_steps};
use crate::design::{Earlier, Placed, StepChange};
use crate::diagnostics::Place;
use crate::parameters::{self, Given, TimeSpanText};
use crate::units::{TimeSpan, parse_time_span};
use std::collections::BTreeMap;

/// Hours of work that mean anything.
const TAKES: Range = Range {
    least: 0.0,
    most: 2000.0,
    said: "hours of work, at most 2000 h",
};

/// Waits that mean anything, hours.
const WAIT: f64 = 24.0 * 366.0;

const HANDS: Range = Range {
    least: 0.0,
    most: 100.0,
    said: "0 to 100",
};

/// The changes that make sense, each step once.
pub(super) fn changes(
    g: &mut Gather,
    given: &Given<Vec<Given<parameters::StepChange>>>,
) -> Vec<StepChange> {
    let mut found: Vec<StepChange> = Vec::new();
    for (c, place) in given.entries() {
        g.is_there(&c.step, place, "step");
        let step = step_named(g, &c.step, "step");
        let takes = takes(g, &c.takes);
        let hands = g.whole(&c.hands, &HANDS);
        let after = after(g, &c.after);
        let Some(step) = step else { continue };
        if found.iter().any(|f| f.step == step) {
            let said = format!("'{step}' is there twice");
            let hint = "write all of it in one entry";
            g.fail("same-name", &c.step.place(), said, hint);
            continue;
        }
        found.push(StepChange {
            step,
            place: place.clone(),
            takes,
            hands,
            after,
        });
        break_circle(g, &mut found);
    }
    found
}

/// The step of a name; one that is not known is named with the nearest one.
fn step_named(g: &mut Gather, given: &Given<String>, what: &str) -> Option<&'static str> {
    let named = g.reference(given, what, work_steps().map(|s| s.id))?;
    work_steps().nth(named.value).map(|s| s.id)
}

/// Hours of work; days of a calendar would say nothing of how long anybody works on them.
fn takes(g: &mut Gather, given: &Given<TimeSpanText>) -> Option<Placed<TimeSpan>> {
    let written = g.amount(given, &TAKES, |t| {
        parse_time_span(t).map(TimeSpan::in_hours)
    })?;
    let text = given.value().map_or("", |t| t.0.as_str());
    if text.contains(['d', 'w']) {
        let found = format!("takes is written in days of a calendar: {}", text.trim());
        g.fail(
            "bad-amount",
            &written.place,
            found,
            "write hours of work, such as 6 h",
        );
        return None;
    }
    Some(Placed {
        value: TimeSpan::hours(written.value),
        place: written.place,
    })
}

/// The steps that must be done before one.
fn after(g: &mut Gather, given: &Given<Vec<Given<String>>>) -> Option<Placed<Vec<Earlier>>> {
    let list = given.value()?;
    let mut all: Vec<Earlier> = Vec::new();
    for (text, place) in given.entries() {
        let (name, wait) = match text.split_once('+') {
            Some((name, wait)) => (name, Some(wait)),
            None => (text.as_str(), None),
        };
        let name = Given::Yes(name.trim().to_owned(), place.clone());
        let step = step_named(g, &name, "step");
        let wait = match wait.map(|w| read_wait(g, w, place)) {
            Some(None) => continue,
            Some(wait) => wait,
            None => None,
        };
        if let Some(step) = step.filter(|s| all.iter().all(|e| e.step != *s)) {
            all.push(Earlier { step, wait });
        }
    }
    // A list of which nothing could be read says nothing.
    (list.is_empty() || !all.is_empty()).then(|| Placed {
        value: all,
        place: given.place(),
    })
}

fn read_wait(g: &mut Gather, text: &str, place: &Place) -> Option<TimeSpan> {
    match parse_time_span(text) {
        Ok(hours) if (0.0..=WAIT).contains(&hours.in_hours()) => Some(hours),
        Ok(_) => {
            let found = format!("the wait makes no sense: {}", text.trim().escape_debug());
            g.fail(
                "out-of-range",
                place,
                found,
                "write a time from 0 h to 366 d",
            );
            None
        }
        Err(error) => {
            g.fail("bad-amount", place, error.problem, error.hint);
            None
        }
    }
}

/// Leaves the order of the last change out where it closes a circle, and names the circle.
fn break_circle(g: &mut Gather, changes: &mut [StepChange]) {
    let Some(circle) = circle(changes) else {
        return;
    };
    let Some(last) = changes.last_mut() else {
        return;
    };
    if let Some(after) = last.after.take() {
        let found = format!("the steps wait for each other: {}", circle.join(" after "));
        let hint = format!("leave one of them out of the 'after' of {}", last.step);
        g.fail("work-circle", &after.place, found, hint);
    }
}

/// What a step waits for, the changes counted; hold points always stay.
fn before(step: &'static str, changes: &[StepChange]) -> Vec<&'static str> {
    let usual = work_step(step).map_or(&[][..], |s| s.after);
    let usual = usual.iter().map(|a| a.step);
    let change = changes.iter().find(|c| c.step == step);
    let Some(after) = change.and_then(|c| c.after.as_ref()) else {
        return usual.collect();
    };
    let holds = usual.filter(|s| work_step(s).is_some_and(|s| s.is_hold));
    after.iter().map(|e| e.step).chain(holds).collect()
}

/// A circle of steps that wait for each other, its first one named again at its end.
fn circle(changes: &[StepChange]) -> Option<Vec<&'static str>> {
    let mut done: BTreeMap<&str, bool> = BTreeMap::new();
    for step in work_steps() {
        let mut path = Vec::new();
        if let Some(circle) = walk(step.id, changes, &mut path, &mut done) {
            return Some(circle);
        }
    }
    None
}

/// Goes back from a step; `done` is false for what is on the way, true for what is known to end.
fn walk(
    step: &'static str,
    changes: &[StepChange],
    path: &mut Vec<&'static str>,
    done: &mut BTreeMap<&'static str, bool>,
) -> Option<Vec<&'static str>> {
    match done.get(step) {
        Some(true) => return None,
        Some(false) => {
            let from = path.iter().position(|s| *s == step)?;
            let own = path.iter().skip(from).copied();
            return Some(own.chain([step]).collect());
        }
        None => {}
    }
    done.insert(step, false);
    path.push(step);
    for earlier in before(step, changes) {
        if let Some(circle) = walk(earlier, changes, path, done) {
            return Some(circle);
        }
    }
    path.pop();
    done.insert(step, true);
    None
}
