//! Figures: several views on one sheet, each with its caption and its leader notes.
//!
//! [`Sheets`] lays the figures of a kind out on as many sheets as they take, by [`arrange`], which says which figure lies
//! where and at which scale; [`Caption`] stands below each; [`place_notes`] letters notes in a column beside a view, with
//! leaders that never cross.

mod arrange;
mod caption;
mod notes_column;
mod ports;
mod sheets;

pub use arrange::{Arrangement, Figure, Place, Wishes, arrange};
pub use caption::Caption;
pub use notes_column::{Beside, LeaderNote, NotesColumn, notes_height, notes_width, place_notes};
pub use sheets::{Kind, Sheets, Shown};
