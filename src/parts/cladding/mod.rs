//! What goes on the frame: base channel, boards, coats and the tile band, face by face.

mod boards;
mod channel;
mod coats;
mod joints;
mod layout;
mod on_face;
#[cfg(test)]
mod tests;
mod tile_columns;
mod tiles;

use crate::parts::Piece;
use crate::plan::Plan;
use on_face::OnFace;

/// All cladding, in the order of the faces: for each its base channel, boards, base coat, finish coat and tiles.
pub(super) fn pieces(plan: &Plan) -> Vec<Piece> {
    let clad = (0..plan.faces.len()).filter(|&i| !plan.faces[i].wall);
    clad.flat_map(|index| {
        let on = OnFace::new(plan, index);
        let mut pieces = channel::channel(&on);
        pieces.extend(boards::boards(&on, &plan.steel_behind(index)));
        pieces.extend(coats::base_coat(&on));
        pieces.extend(coats::finish_coat(&on));
        pieces.extend(tiles::tiles(&on));
        pieces
    })
    .collect()
}
