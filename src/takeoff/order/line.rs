//! One line of the order.

use crate::catalog::Need;
use crate::takeoff::Shares;
use crate::units::Money;

/// So many units of one thing.
#[derive(Clone, Debug, PartialEq)]
pub struct Purchase {
    /// What it serves; at least one.
    pub needs: Vec<Need>,
    /// What the shop calls it; the need's own name where nobody is known to sell it.
    pub name: String,
    /// Where one buys it; empty when that is not known.
    pub shop: String,
    /// The unit it is sold in, such as `stick`, `sheet`, `bag 36 kg`.
    pub unit: String,
    /// How many units; `None` when the size of a unit is not known.
    pub count: Option<u32>,
    /// How much is needed, as text with its unit, without spare.
    pub needed: String,
    /// What is bought beyond that, as text; empty for nothing.
    pub spare: String,
    /// What one unit costs before tax; `None` when that is not known.
    pub price: Option<Money>,
    /// Whether the price is an invented example.
    pub example: bool,
    /// How much of it goes to each run.
    pub shares: Shares,
}

impl Purchase {
    /// What the line costs before tax; `None` when its price or its count is not known.
    pub fn cost(&self) -> Option<Money> {
        Some(self.price?.times(self.count?))
    }
}
