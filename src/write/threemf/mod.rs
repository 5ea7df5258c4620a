//! 3MF, in millimetres: meshes with names and colours, and where each of them stands.
//!
//! The core format (ISO/IEC 25422; 3MF Core Specification 1.3) and its base materials, without extensions, so that
//! every reader knows all of it. A mesh that is used often is written once.

mod document;
mod island;
mod model;
mod package;

pub use document::{Document, Item, Material, Object};
pub use island::island;
pub use package::threemf;
