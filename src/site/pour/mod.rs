//! The pour: batches, weather and setting.

use crate::plan::Plan;

/// What is mixed from bags, as the takeoff has it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Mixed {}

/// How concrete and coats are mixed, placed and finished.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PourPlan {}

/// Plans the pour.
pub fn reckon(_: &Plan, _: &[Mixed]) -> PourPlan {
    PourPlan {}
}
