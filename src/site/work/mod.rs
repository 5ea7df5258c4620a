//! The order of work: what is done when, by whom, and what must wait.

use crate::parts::Assembly;
use crate::plan::Plan;
use crate::site::pour::PourPlan;

/// The work in its order.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Order {}

/// Orders the work.
pub fn reckon(_: &Plan, _: &Assembly, _: &PourPlan) -> Order {
    Order {}
}
