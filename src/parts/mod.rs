//! Parts: every piece of the island as a solid in its place.

mod assembly;
mod part;

pub use assembly::{Assembly, Piece, SolidId};
pub use part::{Group, Part, PartKind};
