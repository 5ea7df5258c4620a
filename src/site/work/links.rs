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

/// A wait before it is a tie.
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

/// What they wait for. Who comes after a step that is left out comes after what that one would have come after, without its
/// waits: nothing was done that had to set.
///
/// Invariant: no two ties have the same ends.
pub fn ties(amounts: &Amounts, taken: &[&'static WorkStep]) -> Vec<Tie> {
    let mut ties: Vec<Tie> = Vec::new();
    for (to, step) in taken.iter().enumerate() {
        let mut open = before(amounts, step);
        while let Some((earlier, carried)) = open.pop() {
            match taken.iter().position(|s| s.id == earlier.id) {
                Some(from) => tie(&mut ties, from, to, carried),
                None => open.extend(
                    before(amounts, earlier)
                        .into_iter()
                        .map(|(step, _)| (step, Carried::default())),
                ),
            }
        }
    }
    ties.sort_by_key(|t| (t.to, t.from));
    ties
}

/// Adds a tie; of two between the same steps the one that waits stays, or the longer wait.
fn tie(ties: &mut Vec<Tie>, from: usize, to: usize, carried: Carried) {
    let new = Tie {
        from,
        to,
        wait: carried.wait,
        due: carried.due,
        why: carried.why,
    };
    let rank = |t: &Tie| (t.due.is_some(), t.wait);
    match ties.iter_mut().find(|t| (t.from, t.to) == (from, to)) {
        Some(old) if rank(old) < rank(&new) => *old = new,
        Some(_) => {}
        None => ties.push(new),
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
