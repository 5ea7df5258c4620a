//! The printable scale model: the island's layers as solids that a printer can lay down, one by one, cut to fit its bed.

mod base;
mod counter;
mod fit;
mod frame;
mod joint;
mod laid;
mod make;
mod members;
mod model;
mod plates;
mod rough;
mod scale;
mod split;
#[cfg(test)]
mod tests;
mod thickness;

pub use make::scale_model;
pub use members::Bar;
pub use model::{Layer, Piece, Plate, ScaleModel};
