//! Cement board.

use super::OnFace;
use super::layout::sheets;
use crate::parts::{Group, PartKind, Piece};
use crate::plan::Steel;

/// The boards of one face, numbered course by course from the bottom, each course from left to right.
pub(super) fn boards(on: &OnFace, steel: &[Steel]) -> Vec<Piece> {
    let layer = on.layers.board;
    let thickness = on.design.trade.board_thickness.value;
    let thickness = on.design.project.units.spell_with_unit(thickness);
    let plate = on.plate(
        PartKind::Board,
        Group::Boards,
        "cement board",
        format!("board {thickness}"),
    );
    let openings = &on.face().openings;
    sheets(on.ends(layer), openings, steel, &on.courses)
        .iter()
        .flat_map(|sheet| sheet.cut(openings))
        .zip(1..)
        .map(|(region, number)| plate.piece(on.mark(&format!("B{number:02}")), &region, layer))
        .collect()
}
