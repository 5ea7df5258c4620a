//! How the frame is set out, and how it stands where it was measured.

mod level;
mod points;
mod reckon;
mod square;
#[cfg(test)]
mod tests;

pub use level::{Raise, raises};
pub use points::{SetPoint, points};
pub use reckon::{SetLength, SetLengthOf, Standing, reckon};
pub use square::{SquareMark, square_mark};
