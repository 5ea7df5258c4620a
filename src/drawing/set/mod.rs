//! The drawing set: which sheets there are, in which order, how they are numbered, and how they name each other.

mod contents;
mod draw;
mod families;
#[cfg(test)]
mod tests;
mod told;

pub use contents::{Contents, Entry, Planned};
pub use draw::{Drawn, Set, looks, sheets};
pub use told::Told;
