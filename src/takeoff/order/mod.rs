//! The order list: what to buy where, in whole purchase units, and what it costs.

mod by_amount;
mod choice;
mod from_lists;
mod line;
mod list;
mod share;
mod table;
#[cfg(test)]
mod tests;

pub(super) use by_amount::by_amount;
pub(super) use choice::{units, whole};
pub(super) use from_lists::{bags, sheets, sticks};
pub use line::Purchase;
pub use list::{Order, order};
pub(super) use table::{table, totals};
