//! The first sheet: list of sheets, site plan, levels, key.

use super::set::{Drawn, Planned, Set};
use crate::drawing::border::Frame;
use crate::parts::Assembly;
use crate::plan::Plan;

/// The name of these sheets in the set.
pub const CHAPTER: &str = "Index";

/// Which sheets there are.
pub fn planned(_plan: &Plan, _assembly: &Assembly, _frame: &Frame) -> Vec<Planned> {
    Vec::new()
}

/// Draws one of them.
pub fn draw(_set: &Set, _number: usize) -> Option<Drawn> {
    None
}
