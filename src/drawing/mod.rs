//! Drawings as data: sheets, views, hidden lines, dimensions and template pages.

mod border;
#[cfg(test)]
pub(crate) mod check;
pub mod dimension;
pub mod hidden;
pub mod lettering;
pub mod occupancy;
pub mod page;
mod scale;
mod sheet;

pub use sheet::{Align, Dash, Item, Layer, Pen, Scale, Sheet};
