//! Rectangles on stock sheets by guillotine cuts: every cut runs from edge to edge of what is left, as a knife along a
//! straightedge or a saw on a track cuts.
//!
//! Knows nothing of islands: sides are whole steps (a sixteenth of an inch, or a millimetre), costs whole cents.

mod problem;

pub use problem::{Answer, Demand, Leaf, Problem, Sheet, Stock};
