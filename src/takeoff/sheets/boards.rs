//! Cement board.

use super::piece::{SheetPiece, cut_outs};
use crate::geometry::Solid;
use crate::parts::{Assembly, PartKind};
use crate::units::Notation;

/// The rectangle round every board, longer side first; openings and notches are cut out of it afterwards.
pub(super) fn pieces(notation: Notation, assembly: &Assembly) -> Vec<SheetPiece> {
    let parts = assembly.parts.iter().enumerate();
    let boards = parts.filter(|(_, p)| p.kind == PartKind::Board);
    boards
        .map(|(number, part)| {
            let solid = assembly.solid(part);
            let size = solid.bounds().high - solid.bounds().low;
            let sides = (size.x.max(size.y), size.x.min(size.y));
            let note = match solid {
                Solid::Extrusion(e) => cut_outs(&e.profile),
                _ => String::new(),
            };
            SheetPiece {
                note,
                ..SheetPiece::of(notation, (number, part), sides)
            }
        })
        .collect()
}
