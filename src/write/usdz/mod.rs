//! USDZ: Universal Scene Description as text, alone in an archive that is not compressed. Metres, y up.
//!
//! What it holds stays within what phones' viewers show: triangles with flat normals, materials of USD's preview surface, no
//! file beside the one.

mod layer;
mod materials;
mod names;
mod package;
mod places;
mod shapes;
mod spelling;

pub use package::usdz;

#[cfg(test)]
mod tests;
