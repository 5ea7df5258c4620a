//! Sheets that lie beside the printer: how the pieces of the scale model go together, what they are, and how they lie on
//! the bed.

mod bed_view;
mod beds;
mod list;
mod moves;
mod prints;
mod sheets;
#[cfg(test)]
mod tests;
mod together;

pub use prints::{Level, Print, Prints};
pub use sheets::sheets;
