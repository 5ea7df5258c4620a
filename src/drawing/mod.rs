//! Drawings as data: sheets, views, hidden lines, dimensions and template pages.

pub mod hidden;
pub mod lettering;
mod sheet;

pub use sheet::{Align, Dash, Item, Layer, Pen, Scale, Sheet};
