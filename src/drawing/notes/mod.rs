//! General notes.

mod columns;
mod sheets;
#[cfg(test)]
mod tests;
mod text;
mod values;

pub use sheets::{draw, planned};
pub use values::value;

/// The name of these sheets in the set.
pub const CHAPTER: &str = "General notes";
