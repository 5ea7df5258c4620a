//! Sheet layouts: every board, the substrate, the plywood of the forms and the mesh on a sheet, and the sheets that cost
//! least.
//!
//! Sides are whole steps, a sixteenth of an inch or a millimetre: pieces rounded up, sheets rounded down. Along a sheet,
//! and for pieces that may not be turned along the piece, runs the grain.

mod boards;
pub(in crate::takeoff) mod forms;
mod joints;
mod laying;
mod layout;
mod list;
pub(in crate::takeoff) mod mesh;
mod piece;
mod stock;
mod substrate;
mod table;
mod zones;

#[cfg(test)]
mod tests;

pub use laying::Laying;
pub use layout::{Offcut, OnSheet, SheetLayout};
pub use list::{SheetList, sheet_lists};
pub use piece::SheetPiece;
pub use stock::StockSheet;
pub(in crate::takeoff) use stock::{is_as_thick, thickness};
pub use table::{summary, table};
