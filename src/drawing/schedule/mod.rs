//! Schedules: tables drawn on sheets.

mod columns;
mod edge;
mod grid;
mod lines;

pub use edge::{edge_mark, edge_notes, edge_schedule};
pub use grid::{Grid, Part};
