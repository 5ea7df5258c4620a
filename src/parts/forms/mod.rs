//! Forms: what the counter is cast against. They are struck when it has set; appliances come after them.
//!
//! An exposed edge takes up to three strips: a wall outside that has the edge profile's counterpart on its inner side;
//! below a turndown a floor that the wall stands on; and an upstand that closes the turndown's inner side below the
//! substrate, where the overhang leaves room for it.

mod corner;
mod cut;
mod cutout;
mod edge;
mod maker;
mod section;
#[cfg(test)]
mod tests;

use super::Piece;
use crate::plan::{Plan, SideKind};
use maker::Maker;

/// All forms: edge by edge counter-clockwise, each corner's before its edge's; then the cutouts'.
pub(super) fn pieces(plan: &Plan) -> Vec<Piece> {
    let mut maker = Maker::new(plan);
    let mut found = Vec::new();
    for (i, side) in plan.counter.sides.iter().enumerate() {
        if side.kind == SideKind::Exposed {
            found.extend(corner::pieces(&mut maker, i));
            found.extend(edge::pieces(&mut maker, i));
            found.extend(edge::stops(&mut maker, i));
        }
    }
    found.extend(cutout::pieces(plan));
    found
}
