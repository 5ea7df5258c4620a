//! Figures: several views on one sheet, each with its caption and its leader notes.
//!
//! [`arrange`] says which figure lies where and at which one scale; [`Caption`] stands below each; [`place_notes`] letters
//! notes in a column beside a view, with leaders that never cross.

mod arrange;
mod caption;
mod notes_column;
mod ports;

pub use arrange::{Arrangement, Figure, Place, arrange};
pub use caption::Caption;
pub use notes_column::{Beside, LeaderNote, NotesColumn, notes_height, place_notes};
