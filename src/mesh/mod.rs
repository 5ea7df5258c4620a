//! The island as triangles: each shape once, each part a placed instance of one.

mod defect;
mod model;
mod selection;

pub use defect::{Defect, Fault};
pub use model::Model;
pub use selection::{Facet, Instance, Selection};
