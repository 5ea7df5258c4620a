//! The island as triangles: each shape once, each part a placed instance of one.

mod appearance;
pub(crate) mod body;
mod defect;
mod flat;
mod model;
pub mod scale_model;
mod selection;
mod showing;
mod viewpoint;
mod y_up;

pub use appearance::{Appearance, Appearances};
pub use defect::{Defect, Fault};
pub use flat::FlatSurface;
pub use model::Model;
pub use selection::{Facet, Instance, Selection};
pub use showing::{SHOWN_TOLERANCE, Showing};
pub use viewpoint::{FIELD, Lens, Viewpoint};
pub use y_up::UprightPlace;
