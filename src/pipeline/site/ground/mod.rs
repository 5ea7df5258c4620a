//! The ground: its tables, and what its sheets show.

mod contours;
mod sheet;
mod tables;
mod words;

pub(super) use sheet::sheet;
pub(super) use tables::tables;
