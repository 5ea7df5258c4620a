//! Details at a large scale, cut through the parts as they are made.

mod breaks;
mod content;
mod corner;
mod cut_at;
mod cutout;
mod drawing;
mod edge;
mod feet;
mod foot;
mod list;
mod opening;
mod paint;
mod places;
mod plane;
mod sheets;
#[cfg(test)]
mod tests;
mod tile;
mod words;

pub(in crate::drawing) use breaks::{draw as draw_breaks, line_between as draw_break};
pub(in crate::drawing) use content::Note;
pub(in crate::drawing) use cut_at::{Called, cut_at};
pub(in crate::drawing) use feet::of as feet_of;
#[cfg(test)]
use list::details;
pub use sheets::{CHAPTER, draw, planned};
pub(in crate::drawing) use words::Words;
