//! The island in three dimensions, and taken apart.

mod corner;
mod finished;
mod layers;
mod lines;
mod listed;
mod names;
mod taken_apart;

pub use listed::{CHAPTER, draw, planned};
