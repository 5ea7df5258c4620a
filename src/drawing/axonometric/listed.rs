//! Which axonometric sheets the set has.

use super::{finished, taken_apart};
use crate::drawing::border::Frame;
use crate::drawing::set::{Drawn, Planned, Set};
use crate::parts::Assembly;
use crate::plan::Plan;

/// The name of these sheets in the set.
pub const CHAPTER: &str = "Axonometric";

/// Each sheet's file name and title.
const SHEETS: [(&str, &str); 2] = [
    ("axonometric-finished", "The finished island, isometric"),
    (
        "axonometric-layers",
        "The layers in building order, isometric",
    ),
];

/// The finished island, and its layers taken apart.
pub fn planned(_plan: &Plan, _assembly: &Assembly, _frame: &Frame) -> Vec<Planned> {
    let sheets = SHEETS.iter();
    let planned = sheets.map(|(stem, title)| Planned {
        stem: (*stem).to_owned(),
        title: (*title).to_owned(),
        ..Planned::default()
    });
    planned.collect()
}

/// Draws one of them.
pub fn draw(set: &Set, number: usize) -> Option<Drawn> {
    let (_, title) = SHEETS.get(number)?;
    match number {
        0 => finished::draw(set, title),
        _ => taken_apart::draw(set, title),
    }
}
