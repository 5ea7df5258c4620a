//! Solids cut by a plane: the half that stays, closed, and the cut region.

mod cap;
mod crossing;
mod half;
#[cfg(test)]
pub(super) mod proof;
#[cfg(test)]
mod tests;

pub use half::Cut;
