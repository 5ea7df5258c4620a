//! Takeoff: how much of everything, what to cut from which stick and sheet, how many bags, what to buy and what it costs.

pub mod cut_list;
pub mod cutting;
pub mod nesting;
pub mod order;
mod quantity;
mod reckon;
mod suits;
mod whereabouts;

pub use quantity::{Amount, Quantity};
pub use reckon::{Takeoff, reckon, tables};
pub use whereabouts::whereabouts;
