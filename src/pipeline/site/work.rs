//! The order of work.

mod agenda;
mod sheet;
mod tables;

use super::OutputFile;
use crate::plan::Plan;
use crate::site::work::Order;
use crate::write;

pub(super) use sheet::sheet;
pub(super) use tables::tables;

/// Its files that are no tables: the calendar, where there are dates.
pub(super) fn files(plan: &Plan, order: &Order) -> Vec<OutputFile> {
    if order.span.is_none() {
        return Vec::new();
    }
    vec![OutputFile {
        path: "site/work.ics".to_owned(),
        bytes: write::ical(&agenda::agenda(plan, order)),
    }]
}
