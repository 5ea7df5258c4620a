//! Mixes: what is bought in bags and cans by how far it goes, with water and batches.

mod bags;
mod bucket;
mod mix;
mod table;
#[cfg(test)]
mod tests;

pub use bags::mixes;
pub use bucket::{Batch, Water};
pub use mix::{Bags, Mix};
pub use table::table;
