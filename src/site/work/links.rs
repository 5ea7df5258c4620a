//! Which steps an island takes, and what each of them waits for.

use super::amounts::Amounts;
use super::network::Minutes;
use crate::catalog::work::{Due, Wait, WorkStep, work_step, work_steps};
use crate::design::StepChange;

/// One step waits for another.
#[derive(Clone, Debug, PartialEq)]
pub struct Tie {
    /// The number of the earlier one.
    pub from: usize,
    /// The number of the later one.
    pub to: usize,
    /// What passes in between: minutes.
    pub wait: Minutes,
    /// What the setting clock says must have passed since placing began.
    pub due: Option<Due>,
    /// Why, with the source; empty without a wait.
    pub why: String,
}

/// A wait on its way through steps that are left out.
#[derive(Clone, Default)]
struct Carried {
    wait: Minutes,
    due: Option<Due>,
    why: String,
}

/// The steps that an island takes, in the order of the trade.
pub fn taken(amounts: &Amounts) -> Vec<&'static WorkStep> {
    work_steps().filter(|s| amounts.holds(s.when)).collect()
}

/// What they wait for; who waits for a step that is left out waits for what that one would have waited for.
pub fn ties(amounts: &Amounts, taken: &[&'static WorkStep]) -> Vec<Tie> {
    let mut ties: Vec<Tie> = Vec::new();
    for (to, step) in taken.iter().enumerate() {
        for (earlier, carried) in before(amounts, step) {
            follow(amounts, taken, (earlier, carried), to, &mut ties);
        }
    }
    ties
}

fn follow(
    amounts: &Amounts,
    taken: &[&'static WorkStep],
    (earlier, carried): (&'static WorkStep, Carried),
    to: usize,
    ties: &mut Vec<Tie>,
) {
    if let Some(from) = taken.iter().position(|s| s.id == earlier.id) {
        let tie = Tie {
            from,
            to,
            wait: carried.wait,
            due: carried.due,
            why: carried.why,
        };
        let is_known = |t: &Tie| (t.from, t.to, t.wait, t.due) == (from, to, tie.wait, tie.due);
        if !ties.iter().any(is_known) {
            ties.push(tie);
        }
        return;
    }
    for (before_it, own) in before(amounts, earlier) {
        let carried = Carried {
            wait: own.wait + carried.wait,
            due: own.due.or(carried.due),
            why: if own.why.is_empty() {
                carried.why.clone()
            } else {
                own.why
            },
        };
        follow(amounts, taken, (before_it, carried), to, ties);
    }
}

/// What a step waits for as the file and the trade have it, steps that are left out included.
fn before(amounts: &Amounts, step: &WorkStep) -> Vec<(&'static WorkStep, Carried)> {
    let usual = step.after.iter().filter(|a| amounts.holds(a.when));
    let usual: Vec<_> = usual
        .filter_map(|a| Some((work_step(a.step)?, carried(a.wait))))
        .collect();
    let change = |c: &&StepChange| c.step == step.id;
    let changes = &amounts.design().work.steps;
    let Some(after) = changes.iter().find(change).and_then(|c| c.after.as_ref()) else {
        return usual;
    };
    let mut all: Vec<(&'static WorkStep, Carried)> = Vec::new();
    for earlier in &after.value {
        let Some(earlier_step) = work_step(earlier.step) else {
            continue;
        };
        let own = usual.iter().filter(|(s, _)| s.id == earlier.step);
        match earlier.wait {
            Some(wait) => all.push((earlier_step, of_the_file(wait.in_hours()))),
            None if own.clone().count() > 0 => all.extend(own.cloned()),
            None => all.push((earlier_step, Carried::default())),
        }
    }
    let named = |id: &str| after.value.iter().any(|e| e.step == id);
    let holds = usual.into_iter().filter(|(s, _)| s.is_hold && !named(s.id));
    all.extend(holds);
    all
}

fn of_the_file(hours: f64) -> Carried {
    Carried {
        wait: minutes(hours),
        due: None,
        why: if hours > 0.0 {
            "as the file says: work.steps".to_owned()
        } else {
            String::new()
        },
    }
}

fn carried(wait: Wait) -> Carried {
    match wait {
        Wait::None => Carried::default(),
        Wait::Hours(hours, why) => Carried {
            wait: minutes(hours),
            due: None,
            why: why.to_owned(),
        },
        Wait::Due(due, why) => Carried {
            wait: 0,
            due: Some(due),
            why: why.to_owned(),
        },
    }
}

/// Hours in whole minutes.
pub fn minutes(hours: f64) -> Minutes {
    (hours * 60.0).round().clamp(0.0, 1e8) as Minutes
}
