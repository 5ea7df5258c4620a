//! One-dimensional cutting stock: which pieces to cut from which stick, for the least money.
//!
//! Knows nothing of islands: lengths are whole steps (a sixteenth of an inch, or a millimetre), costs whole cents.

mod problem;

pub use problem::{Answer, Cut, Demand, Pattern, Problem, Proof, Stick};
