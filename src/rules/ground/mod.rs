//! Ground and stability: does it stand.

mod bearing;
mod heaviest_lift;
mod overturning;
mod packing;
mod pavers;
mod runoff;
mod sliding;
mod stance;
mod survey;
mod total_weight;

use super::Rule;
pub(super) use stance::{LEAN, PUSH};

/// The rules of this family.
pub(super) static RULES: &[&Rule] = &[
    &overturning::OVERTURNING,
    &sliding::SLIDING,
    &bearing::BEARING,
    &pavers::PAVERS,
    &total_weight::TOTAL_WEIGHT,
    &heaviest_lift::HEAVIEST_LIFT,
    &survey::SURVEY,
    &packing::PACKING,
    &runoff::RUNOFF,
];
