//! What hangs in the workshop: sticks and boards with their cuts, and labels for the parts.

mod board;
mod board_sheet;
mod board_view;
mod key;
mod label;
mod led;
mod stick;
mod stick_sheet;
mod stick_view;
#[cfg(test)]
mod tests;

pub use board::{Board, BoardCut, BoardPiece, BoardSet, Rectangle};
pub use board_sheet::board_sheets;
pub use label::{Label, label_sheets};
pub use stick::{CutEnd, Foot, Stick, StickCut, StickSet};
pub use stick_sheet::stick_sheets;
