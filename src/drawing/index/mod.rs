//! The first sheet: list of sheets, site plan, the island in a few rows, levels, key.

mod block;
mod distance;
mod entries;
mod facts;
mod key;
mod layout;
mod north;
mod sheets;
#[cfg(test)]
mod tests;

pub use sheets::{Index, complete, draw, planned};

/// The name of these sheets in the set.
pub const CHAPTER: &str = "Index";
