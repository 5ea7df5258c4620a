//! The counter slab: a plan outline, an edge profile on each side, and cutouts.

mod corner;
mod description;
mod faceting;
#[cfg(test)]
mod tests;
mod validity;
mod volume;

pub use corner::SlabCorner;
pub use description::{CornerShape, ProfilePoint, Slab, SlabEdge};
pub(in crate::geometry) use validity::{Joint, Which};
pub use validity::{SlabFault, SlabTrouble};
