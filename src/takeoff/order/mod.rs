//! The order list: what to buy where, in whole purchase units, and what it costs.

mod choice;
mod from_takeoff;
mod line;
mod list;
mod share;
mod table;

pub(super) use choice::{units, whole};
pub(super) use from_takeoff::{by_amount, sticks};
pub use line::Purchase;
pub use list::{Order, order};
pub(super) use table::{table, totals};
