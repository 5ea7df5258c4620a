//! The archive round the layer.

use super::layer::layer;
use crate::mesh::Showing;
use crate::write::archive::{ArchiveError, Entry, Keeping, archive};

/// What the specification of the package asks: content begins at multiples of so many bytes.
const ALIGNMENT: u16 = 64;

/// Writes what one sees of the finished island as USDZ.
///
/// # Errors
/// When it is larger than the archive can hold.
pub fn usdz(showing: &Showing) -> Result<Vec<u8>, ArchiveError> {
    let text = layer(showing);
    let entry = Entry {
        name: "island.usda",
        bytes: text.as_bytes(),
    };
    let keeping = Keeping::Stored {
        alignment: ALIGNMENT,
    };
    archive(&[entry], keeping)
}
