//! Sections: the island cut through.

mod cuts;

#[expect(unused_imports, reason = "the sections are drawn next")]
pub use cuts::{Cut, cuts};

use super::set::{Drawn, Planned, Set};
use crate::drawing::border::Frame;
use crate::parts::Assembly;
use crate::plan::Plan;

/// The name of these sheets in the set.
pub const CHAPTER: &str = "Sections";

/// Which sheets there are.
pub fn planned(_plan: &Plan, _assembly: &Assembly, _frame: &Frame) -> Vec<Planned> {
    Vec::new()
}

/// Draws one of them.
pub fn draw(_set: &Set, _number: usize) -> Option<Drawn> {
    None
}
