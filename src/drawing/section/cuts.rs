//! Where the island is cut.

use crate::plan::Plan;

/// A vertical plane across a run.
#[derive(Clone, Debug, PartialEq)]
pub struct Cut {
    /// Its letter in the set.
    pub letter: String,
    /// Number of the run.
    pub run: usize,
    /// From the run's left end, millimetres. One looks towards the right end.
    pub u: f64,
    /// What it passes through.
    pub title: String,
}

/// All cuts, in the order of their letters.
pub fn cuts(_plan: &Plan) -> Vec<Cut> {
    Vec::new()
}
