//! The pour: the hours of the forecast as a strip, batches, the setting clock and what to be careful of.

mod panel;
mod scale;
mod sheets;
mod strip;
#[cfg(test)]
mod tests;

pub use sheets::{draw, planned};
pub use strip::{Marked, Strip, StripHour, Worth};

use crate::table::Table;

/// The name of these sheets in the set.
pub const CHAPTER: &str = "Pour";

/// What the sheets show.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PourSheet {
    /// The hours of the forecast round the pour; `None` without a forecast.
    pub strip: Option<Strip>,
    /// Tables with the notes below them, in the order of their weight.
    pub tables: Vec<(Table, Vec<String>)>,
    /// What is said over everything.
    pub notes: Vec<String>,
}
