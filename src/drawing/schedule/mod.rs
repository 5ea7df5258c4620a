//! Schedules: tables drawn on sheets.

mod appliances;
mod columns;
mod edge;
mod flow;
mod grid;
mod heights;
mod lines;
mod materials;
mod members;
mod openings;
mod sheets;
mod spelling;
#[cfg(test)]
mod tests;

pub use appliances::{appliance_notes, appliance_schedule, rating_notes, rating_schedule};
pub use edge::{edge_mark, edge_notes, edge_schedule, profile as edge_profile};
pub use flow::{Portion, flow};
pub use grid::Grid;
pub use heights::{Heights, Part};
pub use lines::broken;
pub use materials::{material_notes, material_schedule};
pub use members::{stud_notes, stud_schedule};
pub use openings::{opening_notes, opening_schedule};
pub(super) use sheets::{Schedules, draw, planned};

/// The name of these sheets in the set.
pub const CHAPTER: &str = "Schedules";
