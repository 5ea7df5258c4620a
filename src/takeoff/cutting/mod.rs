//! One-dimensional cutting stock: which pieces to cut from which stick, for the least money.
//!
//! Knows nothing of islands: lengths are whole steps (a sixteenth of an inch, or a millimetre), costs whole cents.

mod align;
mod bound;
mod bounded;
mod column;
mod covering;
mod filling;
mod greedy;
mod layout;
mod lp;
mod master;
mod meter;
mod mixed;
mod mixes;
mod offcut;
mod packing;
mod plain;
mod pricing;
mod problem;
mod rounding;
mod settle;
mod solve;
mod task;
#[cfg(test)]
mod tests;

pub use problem::{Answer, Cut, Demand, Offcut, Pattern, Problem, Proof, Stick};
pub use solve::solve;
