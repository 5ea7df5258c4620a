//! The counter: the slab and the sheet it is cast on.

mod slab;
mod substrate;

use super::Piece;
use crate::plan::Plan;

/// The substrate, then the slab.
pub(super) fn pieces(plan: &Plan) -> Vec<Piece> {
    vec![substrate::substrate(plan), slab::slab(plan)]
}
