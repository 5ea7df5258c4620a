//! From an exact description to triangles: flattened outlines, triangulated plane pieces and strips that share corners.

mod polygon;
mod ring;
mod shell;

pub use polygon::{fill, triangulate};
pub use ring::Ring;
pub use shell::Shell;
