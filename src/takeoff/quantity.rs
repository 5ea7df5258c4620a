//! How much of something.

use super::Amount;
use crate::catalog::Need;
use crate::units::Length;

/// How much of one thing is needed at one place of the island, exact, without spare.
#[derive(Clone, Debug, PartialEq)]
pub struct Quantity {
    /// What serves it; `None` for what is told and not bought, such as a weight.
    pub need: Option<Need>,
    /// How long the screw or how high the standoff must be that serves it.
    pub length: Option<Length>,
    /// What it is, such as `board` or `slab, as poured`.
    pub item: String,
    /// Number of its run; `None` when it spans several.
    pub run: Option<usize>,
    /// Number of its face, where it belongs to one.
    pub face: Option<usize>,
    /// How much.
    pub amount: Amount,
    /// How it was reckoned, in one clause.
    pub reckoned: String,
}
