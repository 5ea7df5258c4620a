//! Hatches: what a cut goes through, told by its pattern (after ISO 128-50 and trade habit).
//!
//! | material | pattern |
//! | --- | --- |
//! | sheet steel | solid black while it is thinner than 0.7 mm on paper, touching pieces parted by a light gap; else pairs of lines |
//! | cement board | lines at 45 degrees |
//! | base coat | fine stipple |
//! | finish coat | close lines straight across the layer |
//! | tile with its bed | a lattice of lines at 45 degrees both ways |
//! | cast concrete | wide lines at 45 degrees with scattered aggregate |
//! | plywood | its plies along, ticks across every second one |
//! | sleeper | a cross from corner to corner |
//! | earth | clusters of short strokes, turned in turn |
//! | pavers | pairs of lines |
//!
//! What touches a piece of its own material is hatched the other way.

mod lines;
mod material;
mod patch;
mod pattern;
mod plain;
mod scatter;
mod sheet_steel;
#[cfg(test)]
mod tests;

pub use material::Material;
pub use patch::{Patch, draw, thickness};
pub use plain::hatch;
