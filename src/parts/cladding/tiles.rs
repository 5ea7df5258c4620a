//! The tile band.

use super::OnFace;
use crate::design::TileBand;
use crate::geometry::{Outline, Region};
use crate::parts::{Group, PartKind, Piece};
use crate::plan::FaceOpening;

/// The tiles at the ends of a face are at least this share of a tile wide, common practice.
const NARROWEST: f64 = 1.0 / 3.0;

/// A piece narrower or lower than this is left to the joint mortar, millimetres, common practice.
const SMALLEST_PIECE: f64 = 10.0;

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
    let columns = columns(on.ends(band.layer), asked);
    let places = band
        .rows
        .iter()
        .flat_map(|&z| columns.iter().map(move |&s| (s, z)));
    places
        .flat_map(|(s, z)| cut(s, z, &on.face().openings))
        .zip(1..)
        .map(|(region, number)| plate.piece(on.mark(&format!("T{number:03}")), &region, band.layer))
        .collect()
}

/// Left and right edge of each tile of a row: symmetric about the middle, as many whole tiles as leave none at the ends
/// narrower than a third.
fn columns(ends: (f64, f64), asked: &TileBand) -> Vec<(f64, f64)> {
    let (tile, joint) = (asked.tile_width.mm(), asked.joint.mm());
    let room = ends.1 - ends.0;
    let pitch = tile + joint;
    if room < SMALLEST_PIECE {
        return Vec::new();
    }
    let whole = ((room + joint) / pitch + 1e-9).floor();
    let rest = room + joint - whole * pitch;
    if rest.abs() < 0.01 {
        return from(ends.0, whole as usize, pitch, tile);
    }
    // What is left at each end beside n whole tiles and their joints.
    let border = |n: f64| (room - n * tile - (n + 1.0) * joint) / 2.0;
    let mut count = whole;
    while count > 0.0 && border(count) < tile * NARROWEST {
        count -= 1.0;
    }
    let cut = border(count);
    if cut < tile * NARROWEST || cut < SMALLEST_PIECE {
        return vec![ends];
    }
    // A wide joint can leave a border wider than a tile: then the joints at the ends are wider.
    let cut_width = cut.min(tile);
    let mut tiles = vec![(ends.0, ends.0 + cut_width)];
    tiles.extend(from(ends.0 + cut + joint, count as usize, pitch, tile));
    tiles.push((ends.1 - cut_width, ends.1));
    tiles
}

fn from(start: f64, count: usize, pitch: f64, tile: f64) -> Vec<(f64, f64)> {
    (0..count)
        .map(|i| {
            let left = start + i as f64 * pitch;
            (left, left + tile)
        })
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::sample::tile_band;

    fn edges(room: f64) -> Vec<(f64, f64)> {
        columns((0.0, room), &tile_band())
    }

    #[test]
    fn end_tiles_are_equal_and_never_narrower_than_a_third() {
        // 150 tiles, 3 joints. 1000: six whole ones would leave (1000 − 900 − 21) / 2 = 39.5 at the ends, less than 50;
        // five leave (1000 − 750 − 18) / 2 = 116.
        let tiles = edges(1000.0);
        assert_eq!(tiles.len(), 7);
        assert_eq!((tiles[0], tiles[6]), ((0.0, 116.0), (884.0, 1000.0)));
        assert_eq!((tiles[1], tiles[5]), ((119.0, 269.0), (731.0, 881.0)));
    }

    #[test]
    fn a_face_of_whole_tiles_has_none_cut_and_a_short_one_has_one() {
        // 6 · 150 + 5 · 3 = 915.
        let tiles = edges(915.0);
        assert!(tiles.len() == 6 && tiles.iter().all(|t| t.1 - t.0 == 150.0));
        assert_eq!(edges(100.0), [(0.0, 100.0)]);
        assert!(edges(9.0).is_empty());
    }
}
