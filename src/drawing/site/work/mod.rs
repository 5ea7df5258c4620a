//! The order of work as a checklist.

use crate::drawing::border::Frame;
use crate::drawing::set::{Drawn, Planned, Set};
use crate::parts::Assembly;
use crate::plan::Plan;

/// The name of these sheets in the set.
pub const CHAPTER: &str = "Work";

/// What the sheet shows.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct WorkSheet {}

/// Which sheets there are.
pub fn planned(_: &Plan, _: &Assembly, _: &Frame) -> Vec<Planned> {
    Vec::new()
}

/// Draws one of them; `None` for a sheet that there is not.
pub fn draw(_: &Set, _: usize) -> Option<Drawn> {
    None
}
