//! The island in three dimensions, and taken apart.

mod corner;
mod finished;
mod layers;
mod lines;
mod listed;
mod names;
mod taken_apart;

pub(in crate::drawing) use corner::best as best_corner;
pub(in crate::drawing) use lines::{PENS, weighed};
pub use listed::{CHAPTER, draw, planned};
pub(in crate::drawing) use names::{Named, columns as name_columns, letter as letter_names};
