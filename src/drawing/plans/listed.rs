//! Which plans the set has.

use crate::drawing::border::Frame;
use crate::drawing::set::{Drawn, Planned, Set};
use crate::parts::Assembly;
use crate::plan::Plan;

const ISLAND: &str = "Plan of the island";
const FRAMING: &str = "Framing plan";
const COUNTER: &str = "Plan of the counter";

fn one(stem: &str, title: &str) -> Vec<Planned> {
    vec![Planned {
        stem: stem.to_owned(),
        title: title.to_owned(),
        ..Planned::default()
    }]
}

/// The plan of the island.
pub fn island_planned(_plan: &Plan, _assembly: &Assembly, _frame: &Frame) -> Vec<Planned> {
    one("plan-island", ISLAND)
}

/// Draws it; it is one sheet.
pub fn island(set: &Set, number: usize) -> Option<Drawn> {
    (number == 0).then(|| super::island::island(set, ISLAND))
}

/// The framing plan.
pub fn framing_planned(_plan: &Plan, _assembly: &Assembly, _frame: &Frame) -> Vec<Planned> {
    one("plan-framing", FRAMING)
}

/// Draws it; it is one sheet.
pub fn framing(set: &Set, number: usize) -> Option<Drawn> {
    (number == 0).then(|| super::framing::framing_plan(set, FRAMING))
}

/// The plan of the counter.
pub fn counter_planned(_plan: &Plan, _assembly: &Assembly, _frame: &Frame) -> Vec<Planned> {
    one("plan-counter", COUNTER)
}

/// Draws it; it is one sheet.
pub fn counter(set: &Set, number: usize) -> Option<Drawn> {
    (number == 0).then(|| super::counter::counter(set, COUNTER))
}
