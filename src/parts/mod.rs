//! Parts: every piece of the island as a solid in its place.

mod assembly;
mod cladding;
mod counter;
mod fixtures;
mod forms;
mod framing;
mod part;
mod plate;

pub use assembly::{Assembly, Piece, SolidId};
pub use fixtures::fills;
pub use part::{Group, Part, PartKind};

use crate::plan::Plan;

/// Makes every part of a planned island, in the order it is built.
pub fn build(plan: &Plan) -> Assembly {
    let mut assembly = Assembly::default();
    assembly.extend(framing::pieces(plan));
    assembly.extend(cladding::pieces(plan));
    assembly.extend(counter::pieces(plan));
    assembly.extend(forms::pieces(plan));
    assembly.extend(fixtures::pieces(plan));
    assembly
}
