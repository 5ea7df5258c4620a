//! One mix: how much of it is needed, and the bags it takes.

use super::{Batch, Water};
use crate::catalog::{Need, Supply};
use crate::takeoff::{Amount, Shares};
use crate::units::Volume;

/// How much of one mix the island takes, and what is bought for it.
#[derive(Clone, Debug, PartialEq)]
pub struct Mix {
    /// What it is.
    pub need: Need,
    /// How much is needed, without spare: in the measure of the supply chosen, else its volume or area.
    pub needed: Amount,
    /// The spare share of the file.
    pub spare: f64,
    /// What is bought; `None` when nothing in the supplies serves it.
    pub bags: Option<Bags>,
    /// How much of it goes to each run.
    pub shares: Shares,
}

/// The bags or cans of one supply.
///
/// Invariant: `exact` ≤ `net` ≤ `count`.
#[derive(Clone, Debug, PartialEq)]
pub struct Bags {
    /// The supply.
    pub supply: Supply,
    /// Bags without spare, not rounded.
    pub exact: f64,
    /// Bags without spare, whole.
    pub net: u32,
    /// Bags to buy, spare included.
    pub count: u32,
    /// Water for one bag; `None` for what comes wet, or where the supply does not say.
    pub water: Option<Water>,
    /// How much is mixed at once; `None` for what comes mixed.
    pub batch: Option<Batch>,
    /// What a batch makes where that is more than the bucket or mixer holds: a coloured bag is not divided.
    pub tub: Option<Volume>,
    /// Water for one batch; `None` where either is not known.
    pub batch_water: Option<Water>,
    /// Batches to mix what is needed, spare not counted.
    pub batches: u32,
}
