//! Drawings as data: sheets, views, hidden lines, dimensions, template pages, workshop sheets and labels.

mod border;
pub mod check;
pub mod dimension;
mod elevation;
pub mod figure;
pub mod fit;
mod hatch;
pub mod hidden;
pub mod lettering;
mod marks;
pub mod occupancy;
mod outline;
pub mod page;
mod plans;
mod scale;
mod scene;
pub mod schedule;
mod set;
mod sheet;
pub mod template;
pub mod workshop;

pub use set::sheets;
pub use sheet::{Align, Dash, Item, Layer, Pen, Scale, Sheet};
