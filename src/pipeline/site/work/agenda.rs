//! The order of work as a calendar.

use crate::plan::Plan;
use crate::site::work::{Order, Step, Times, Waiting};
use crate::units::{Moment, parse_moment};
use crate::write::{Agenda, AgendaEvent};
use sha2::{Digest, Sha256};

/// Waits shorter than this are not put down, hours.
const SHORT: f64 = 6.0;

/// One event a step, and one for each wait of some length.
pub fn agenda(plan: &Plan, order: &Order) -> Agenda {
    let project = &plan.design.project;
    let owner = owner(&project.title, &project.place);
    let steps = order
        .steps
        .iter()
        .filter_map(|s| Some((s, s.times.as_ref()?)));
    let mut events: Vec<AgendaEvent> = steps.map(|(s, t)| event(order, s, t, &owner)).collect();
    let waits = order.waits.iter();
    events.extend(waits.filter_map(|w| waiting(order, w, &owner)));
    Agenda {
        name: format!("{}: order of work", project.title),
        stamp: parse_moment(&project.date).ok().or(order.span.map(|s| s.0)),
        events,
    }
}

/// What sets this island's events apart from those of another one: the same as long as title and place are.
fn owner(title: &str, place: &str) -> String {
    let digest = Sha256::digest(format!("{title}\n{place}").as_bytes());
    let first = digest.iter().take(8);
    let number = first.fold(0_u64, |n, b| (n << 8) | u64::from(*b));
    format!("{number:016x}")
}

fn uid(what: &str, owner: &str) -> String {
    format!("{what}.{owner}@islandwright.invalid")
}

fn event(order: &Order, step: &Step, times: &Times, owner: &str) -> AgendaEvent {
    let hold = step.what.is_hold;
    let mut description = vec![format!(
        "By {}; hands: {}.",
        step.what.by.name(),
        step.hands
    )];
    if order.is_short_of_hands(step) {
        description.push(format!("More hands than the crew of {}.", order.crew));
    }
    if !step.what.fitness.name().is_empty() {
        description.push(format!("Weather: {}.", step.what.fitness.name()));
    }
    description.push(format!("Ready: {}.", step.what.tools.join(", ")));
    description.extend(step.cautions.iter().map(|c| format!("Caution: {c}")));
    description.extend(step.checks.iter().map(|c| format!("[ ] {c}")));
    AgendaEvent {
        uid: uid(step.what.id, owner),
        start: times.start,
        end: times.end,
        summary: format!("{}{}", if hold { "HOLD: " } else { "" }, step.what.name),
        description,
        category: if hold { "hold point" } else { "work" }.to_owned(),
        is_transparent: false,
    }
}

fn waiting(order: &Order, wait: &Waiting, owner: &str) -> Option<AgendaEvent> {
    let (from, to) = (order.steps.get(wait.from)?, order.steps.get(wait.to)?);
    let start: Moment = from.times.as_ref()?.end;
    to.times.as_ref()?;
    (wait.wait.in_hours() >= SHORT).then(|| AgendaEvent {
        uid: uid(&format!("{}.{}", from.what.id, to.what.id), owner),
        start,
        end: start.plus_hours(wait.wait.in_hours()),
        summary: format!("Wait before: {}", to.what.name),
        description: vec![wait.why.clone()],
        category: "wait".to_owned(),
        is_transparent: true,
    })
}
