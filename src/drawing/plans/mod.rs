//! Plans: the island from above with its counter left off, and the counter.

mod chains;
mod counter;
mod cross_chain;
mod island;
mod listed;
mod openings;

pub use listed::{counter, counter_planned, framing, framing_planned, island, island_planned};
