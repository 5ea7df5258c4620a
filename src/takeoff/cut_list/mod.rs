//! Cut lists: every steel member, sleeper, base channel and corner mesh on a stick, and the sticks that cost least.
//!
//! Lengths are whole steps: a sixteenth of an inch, or a millimetre. A piece is as long as the lists print it.

mod faults;
mod list;
mod piece;
mod stock;
mod stretch;
mod table;
#[cfg(test)]
mod tests;

pub use list::{CutList, CutStick, Placed, cut_lists};
pub use piece::{CutPiece, End, PieceKind};
pub use stock::StockStick;
pub(super) use stock::{is_sold_in_sticks, steps_down, steps_up};
pub(super) use table::{summary, table};
