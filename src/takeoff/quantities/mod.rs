//! Quantities: how much of everything, exact and without spare, straight from the parts.

mod all;
mod coats;
mod counter;
mod coverage;
mod forms;
mod framing;
mod joints;
mod rim;
mod row;
mod screws;
mod slab;
mod table;
mod tally;
#[cfg(test)]
mod tests;
mod things;
mod tiles;
mod weight;
mod wire_mesh;

pub use all::quantities;
pub use table::table;
pub use weight::{DEAD_WEIGHT, weighed_as};
