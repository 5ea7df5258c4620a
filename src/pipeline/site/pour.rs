//! The pour.

use crate::drawing::site::pour::PourSheet;
use crate::parts::Assembly;
use crate::plan::Plan;
use crate::site::pour::{Mixed, PourPlan};
use crate::table::Table;

/// What is mixed of the bags that the takeoff buys.
pub(super) fn mixed(_: &Plan, _: &Assembly) -> Vec<Mixed> {
    Vec::new()
}

/// What the pour sheet shows.
pub(super) fn sheet(_: &Plan, _: &PourPlan) -> Option<PourSheet> {
    None
}

/// Its tables.
pub(super) fn tables(_: &Plan, _: &PourPlan) -> Vec<Table> {
    Vec::new()
}
