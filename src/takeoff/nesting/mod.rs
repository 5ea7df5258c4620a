//! Rectangles on stock sheets by guillotine cuts: every cut runs from edge to edge of what is left, as a knife along a
//! straightedge or a saw on a track cuts.
//!
//! Knows nothing of islands: sides are whole steps (a sixteenth of an inch, or a millimetre), costs whole cents.
//!
//! A cut that takes a kerf is the same as no kerf on pieces and sheets that are larger by a kerf each way: two parts
//! then touch where the saw ran, and the sheet's own edge loses nothing. Everything between [`solve`]'s question and its
//! answer is reckoned that way.

mod answer;
mod bound;
mod cover;
mod fill;
mod laid;
mod problem;
mod search;
mod shop;

#[cfg(test)]
mod proof;
#[cfg(test)]
mod tests;

pub use problem::{Answer, Demand, Leaf, Problem, Sheet, Stock};
pub use search::solve;
