//! Takeoff: how much of everything, what to cut from which stick and sheet, how many bags, what to buy and what it costs.

mod amount;
mod asked;
mod compare;
mod corners;
pub mod cut_list;
pub mod cutting;
pub mod mixes;
pub mod nesting;
pub mod order;
mod outlay;
pub mod quantities;
mod quantity;
mod reckon;
mod shares;
pub mod sheets;
mod suits;
mod territory;
mod unasked;
mod whereabouts;

pub use amount::Amount;
pub use compare::{Compared, differences};
pub use quantity::Quantity;
pub use reckon::{Takeoff, reckon, tables};
pub use shares::Shares;
pub use territory::{shares_by_run, territories};
pub use whereabouts::whereabouts;
