//! The ground.

use crate::drawing::site::shims::ShimPlan;
use crate::plan::Plan;
use crate::site::ground::Ground;
use crate::table::Table;

/// What the shim plan shows.
pub(super) fn sheet(_: &Plan, _: &Ground) -> ShimPlan {
    ShimPlan {}
}

/// Its tables.
pub(super) fn tables(_: &Plan, _: &Ground) -> Vec<Table> {
    Vec::new()
}
