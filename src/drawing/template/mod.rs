//! The full-size template of the counter: printable pages that join, and the whole on one sheet.
//!
//! Every page shows a window of the counter's plan at 1:1, seen from above. Neighbouring windows overlap; both pages
//! carry the same crosses in the middle of the overlap. Pages that no line passes are left out. Where the file holds
//! what the calibration bars measure on a print, everything on a page is stretched by drawn over measured, in each
//! direction by itself.

mod calibration;
mod furniture;
mod grid;
mod ink;
#[cfg(test)]
mod joining;
mod key;
mod key_map;
mod labels;
mod layout;
mod page;
mod scene;
mod set;
mod subject;
mod trace;

pub use set::{PagePosition, TemplatePage, TemplateSet, pages, whole};
