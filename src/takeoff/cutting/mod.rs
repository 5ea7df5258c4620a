//! One-dimensional cutting stock: which pieces to cut from which stick, for the least money.
//!
//! Knows nothing of islands: lengths are whole steps (a sixteenth of an inch, or a millimetre), costs whole cents.

mod align;
mod bound;
mod branching;
mod column;
mod covering;
mod greedy;
mod layout;
mod master;
mod meter;
mod mixes;
mod plain;
mod pricing;
mod problem;
mod rounding;
mod solve;
mod task;
#[cfg(test)]
mod tests;

pub use problem::{Answer, Cut, Demand, Pattern, Problem, Proof, Stick};
pub use solve::solve;
