//! Sections: the island cut through, at right angles to its runs.
//!
//! [`cuts`] says where; [`CutView`] shows what any plane goes through, for details too.

mod bays;
mod callouts;
mod cut_view;
mod cuts;
mod drawing;
mod far_notes;
mod plane;
mod sheets;
mod subject;
mod window;
mod words;

pub use cut_view::{CutView, Reach};
pub use cuts::{Cut, cuts};
pub use plane::across;
pub use sheets::{CHAPTER, draw, planned};
