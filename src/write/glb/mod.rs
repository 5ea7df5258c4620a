//! GLB: glTF 2.0 (ISO/IEC 12113) in one file. Metres, y up.
//!
//! No extension is asked for, so that every reader opens it: surfaces are plain single-precision corners with flat normals,
//! each shape there once.

mod buffer;
mod camera;
mod container;
mod document;
mod shapes;
mod tree;

pub use container::glb;

#[cfg(test)]
pub(super) mod tests;
