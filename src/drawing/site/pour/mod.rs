//! The pour: batches, weather and setting clock.

use crate::drawing::border::Frame;
use crate::drawing::set::{Drawn, Planned, Set};
use crate::parts::Assembly;
use crate::plan::Plan;

/// The name of these sheets in the set.
pub const CHAPTER: &str = "Pour";

/// What the sheet shows.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PourSheet {}

/// Which sheets there are.
pub fn planned(_: &Plan, _: &Assembly, _: &Frame) -> Vec<Planned> {
    Vec::new()
}

/// Draws one of them; `None` for a sheet that there is not.
pub fn draw(_: &Set, _: usize) -> Option<Drawn> {
    None
}
