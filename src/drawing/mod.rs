//! Drawings as data: sheets, views, hidden lines, dimensions, template pages, workshop sheets and labels.

mod axonometric;
mod border;
pub mod check;
mod detail;
pub mod dimension;
mod elevation;
pub mod figure;
pub mod fit;
mod followed;
mod hatch;
pub mod hidden;
mod index;
pub mod lettering;
mod marks;
mod notes;
pub mod occupancy;
mod outline;
pub mod page;
mod plans;
mod scale;
pub mod scale_model;
mod scene;
pub mod schedule;
mod section;
mod set;
mod sheet;
pub mod site;
pub mod template;
pub mod workshop;

pub use axonometric::CHAPTER as AXONOMETRIC;
pub use dimension::Dimension;
pub use scene::Look;
pub use set::{Told, looks, sheets};
pub use sheet::{Align, Dash, Ink, Item, Layer, Pen, Scale, Sheet};
