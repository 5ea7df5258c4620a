//! Headers and sills.

use super::mark::Marks;
use super::stand::{level, stand};
use super::stock::Stock;
use crate::geometry::Vector3;
use crate::parts::{PartKind, Piece};
use crate::plan::{CrosspieceKind, Panel};

/// The headers and sills of a panel: track cut longer than the opening, flanges slit, web folded onto the jambs.
pub(super) fn crosspieces(stock: &Stock, panel: &Panel, marks: &mut Marks) -> Vec<Piece> {
    let track = &stock.track;
    let middle = track.steel.depth.mm() / 2.0;
    panel
        .crosspieces
        .iter()
        .map(|c| {
            let kind = match c.kind {
                CrosspieceKind::Header => PartKind::Header,
                CrosspieceKind::Sill => PartKind::Sill,
            };
            let clear = c.p1 - c.p0;
            let up = if c.up { Vector3::z() } else { -Vector3::z() };
            let placement = stand(panel.point(c.p0, middle), c.z, up, level(panel.along));
            let solid = track.tabbed(|length| track.straight(length), clear, c.tab);
            track.piece(
                kind,
                marks,
                panel.face,
                track.cut_length(clear, c.tab),
                (solid, placement),
            )
        })
        .collect()
}
