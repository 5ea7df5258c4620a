//! Which plans the set has.

use crate::drawing::border::Frame;
use crate::drawing::set::{Drawn, Planned, Set};
use crate::parts::Assembly;
use crate::plan::Plan;

fn one(stem: &str, title: &str) -> Vec<Planned> {
    vec![Planned {
        stem: stem.to_owned(),
        title: title.to_owned(),
        ..Planned::default()
    }]
}

/// The plan of the island.
pub fn island_planned(_plan: &Plan, _assembly: &Assembly, _frame: &Frame) -> Vec<Planned> {
    one("plan-island", "Plan of the island")
}

/// Draws it.
pub fn island(set: &Set, _number: usize) -> Option<Drawn> {
    let faces = 0..set.plan.faces.len();
    let views: Vec<_> = faces
        .filter_map(|face| Some((face, set.contents.of_face(face)?)))
        .collect();
    let title = "Plan of the island";
    Some(super::island::island(
        set.plan, set.scene, set.frame, title, &views,
    ))
}

/// The plan of the frame.
pub fn framing_planned(_plan: &Plan, _assembly: &Assembly, _frame: &Frame) -> Vec<Planned> {
    Vec::new()
}

/// Draws it.
pub fn framing(_set: &Set, _number: usize) -> Option<Drawn> {
    None
}

/// The plan of the counter.
pub fn counter_planned(_plan: &Plan, _assembly: &Assembly, _frame: &Frame) -> Vec<Planned> {
    one("plan-counter", "Plan of the counter")
}

/// Draws it.
pub fn counter(set: &Set, _number: usize) -> Option<Drawn> {
    Some(super::counter::counter(
        set.plan,
        set.frame,
        "Plan of the counter",
    ))
}
