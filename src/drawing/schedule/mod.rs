//! Schedules: tables drawn on sheets.

mod columns;
mod edge;
mod grid;
mod lines;

pub use edge::{edge_mark, edge_notes, edge_schedule};
pub use grid::{Grid, Part};

use super::set::{Drawn, Planned, Set};
use crate::drawing::border::Frame;
use crate::parts::Assembly;
use crate::plan::Plan;

/// The name of these sheets in the set.
pub const CHAPTER: &str = "Schedules";

/// Which sheets there are.
pub(super) fn planned(_plan: &Plan, _assembly: &Assembly, _frame: &Frame) -> Vec<Planned> {
    Vec::new()
}

/// Draws one of them.
pub(super) fn draw(_set: &Set, _number: usize) -> Option<Drawn> {
    None
}
