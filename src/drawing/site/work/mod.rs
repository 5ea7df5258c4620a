//! The order of work: a calendar of bars, and a checklist to tick on the spot.

mod axis;
mod bars;
mod block;
mod checklist;
mod key;
mod sheets;
mod values;

pub use sheets::{draw, planned};
pub use values::{Bar, Task, WorkSheet};

/// The name of these sheets in the set.
pub const CHAPTER: &str = "Work";
