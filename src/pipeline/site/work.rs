//! The order of work.

use super::OutputFile;
use crate::drawing::site::work::WorkSheet;
use crate::plan::Plan;
use crate::site::work::Order;
use crate::table::Table;

/// What the work sheet shows.
pub(super) fn sheet(_: &Plan, _: &Order) -> Option<WorkSheet> {
    None
}

/// Its tables.
pub(super) fn tables(_: &Plan, _: &Order) -> Vec<Table> {
    Vec::new()
}

/// Its files that are no tables.
pub(super) fn files(_: &Plan, _: &Order) -> Vec<OutputFile> {
    Vec::new()
}
