//! The tile band.

use super::OnFace;
use super::tile_columns::{SMALLEST_PIECE, columns, edges, stretches};
use crate::geometry::{Outline, Region};
use crate::parts::{Group, PartKind, Piece};
use crate::plan::FaceOpening;

/// The tiles of one face, row by row from the top, each row from left to right.
pub(super) fn tiles(on: &OnFace) -> Vec<Piece> {
    let (Some(band), Some(asked)) = (&on.band, &on.design.tile_band) else {
        return Vec::new();
    };
    let units = on.design.project.units;
    let section = format!(
        "tile {} × {}",
        units.spell_with_unit(asked.tile_width.value),
        units.spell_with_unit(asked.tile_height.value)
    );
    let plate = on.plate(PartKind::Tile, Group::Coats, "tile", section);
    let openings = &on.face().openings;
    let columns: Vec<_> = stretches(on.ends(band.layer), band, openings)
        .into_iter()
        .flat_map(|ends| columns(ends, asked, &edges(band, openings)))
        .collect();
    let places = band
        .rows
        .iter()
        .flat_map(|&z| columns.iter().map(move |&s| (s, z)));
    places
        .flat_map(|(s, z)| cut(s, z, openings))
        .zip(1..)
        .map(|(region, number)| plate.piece(on.mark(&format!("T{number:03}")), &region, band.layer))
        .collect()
}

/// What openings leave of a tile.
fn cut(s: (f64, f64), z: (f64, f64), openings: &[FaceOpening]) -> Vec<Region> {
    let near = openings
        .iter()
        .filter(|o| o.s0 < s.1 && s.0 < o.s1 && o.z0 < z.1 && z.0 < o.z1);
    let holes: Vec<_> = near.map(FaceOpening::outline).collect();
    let whole = Region::solid(Outline::rectangle(s.0, z.0, s.1, z.1));
    if holes.is_empty() {
        return vec![whole];
    }
    let mut pieces = whole.minus(&holes);
    pieces.retain(|p| {
        let b = p.outer.bounds();
        b.width() >= SMALLEST_PIECE && b.height() >= SMALLEST_PIECE
    });
    pieces
}
