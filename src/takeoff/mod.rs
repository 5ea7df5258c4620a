//! Takeoff: how much of everything, what to cut from which stick and sheet, how many bags, what to buy and what it costs.

pub mod cutting;
pub mod nesting;
mod quantity;

pub use quantity::{Amount, Quantity};
