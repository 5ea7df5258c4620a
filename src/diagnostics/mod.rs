//! What the program has to say about its input: findings, how grave they are, and where in the file they point.

mod finding;
mod place;
mod remedy;

pub use finding::{Finding, Verdict, in_order};
pub use place::Place;
pub use remedy::Remedy;
