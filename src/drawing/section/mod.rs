//! Sections: the island cut through.

mod bays;
mod cut_view;
mod cuts;
mod plane;
mod window;

#[expect(unused_imports, reason = "the details are drawn next")]
pub use cut_view::{CutView, Piece, Reach};
#[expect(unused_imports, reason = "the sections are drawn next")]
pub use cuts::{Cut, cuts};
#[expect(unused_imports, reason = "the details are drawn next")]
pub use plane::{across, behind_face, level_at};

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
