//! Plans: the island from above with its counter left off, and the counter.

mod chains;
mod counter;
mod cross_chain;
mod island;
mod openings;

pub use counter::counter;
pub use island::island;
