//! Where the tiles of a band stand along a face.

use crate::design::TileBand;
use crate::plan::{Band, FaceOpening};

/// Tiles at the ends of a face and beside openings are, where the face allows it, at least this share of a tile wide,
/// common practice.
const NARROWEST: f64 = 1.0 / 3.0;

/// A piece narrower or lower than this is left to the joint mortar, millimetres, common practice.
pub(super) const SMALLEST_PIECE: f64 = 10.0;

/// The parts of a band between openings that cut right through it: each is laid out by itself.
pub(super) fn stretches(
    ends: (f64, f64),
    band: &Band,
    openings: &[FaceOpening],
) -> Vec<(f64, f64)> {
    let (top, bottom) = (band.rows.first(), band.rows.last());
    let Some((top, bottom)) = top.zip(bottom).map(|(t, b)| (t.1, b.0)) else {
        return Vec::new();
    };
    let mut through: Vec<_> = openings
        .iter()
        .filter(|o| o.z0 < bottom + 1e-6 && o.z1 > top - 1e-6)
        .collect();
    through.sort_by(|a, b| a.s0.total_cmp(&b.s0));
    let mut found = Vec::new();
    let mut from = ends.0;
    for o in through {
        found.push((from, o.s0));
        from = from.max(o.s1);
    }
    found.push((from, ends.1));
    found.retain(|s| s.1 > s.0);
    found
}

/// An upright side of an opening at which tiles are cut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Edge {
    at: f64,
    /// True when the tile that is left stands to its left.
    left: bool,
}

/// The sides of the openings that reach into a band.
pub(super) fn edges(band: &Band, openings: &[FaceOpening]) -> Vec<Edge> {
    let reaches = |o: &&FaceOpening| band.rows.iter().any(|z| o.z0 < z.1 && z.0 < o.z1);
    let sides = |o: &FaceOpening| [(o.s0, true), (o.s1, false)].map(|(at, left)| Edge { at, left });
    openings.iter().filter(reaches).flat_map(sides).collect()
}

/// Left and right edge of each tile of a row between two ends: symmetric about the middle, or moved out of it where that
/// leaves fewer slivers beside openings.
pub(super) fn columns(ends: (f64, f64), asked: &TileBand, edges: &[Edge]) -> Vec<(f64, f64)> {
    let symmetric = symmetric(ends, asked);
    let (tile, pitch) = (
        asked.tile_width.mm(),
        asked.tile_width.mm() + asked.joint.mm(),
    );
    let inside: Vec<Edge> = edges
        .iter()
        .filter(|e| ends.0 < e.at && e.at < ends.1)
        .copied()
        .collect();
    let mut best = (slivers(ends, &symmetric, &inside, tile), symmetric);
    if best.0 == 0 || ends.1 - ends.0 <= pitch {
        return best.1;
    }
    let last = Edge {
        at: ends.1,
        left: true,
    };
    // A piece of a third or a whole tile at one of the edges: between two such places nothing changes for the better.
    let starts = inside.iter().chain([&last]).flat_map(|e| {
        let piece = |width: f64| {
            if e.left {
                e.at - width
            } else {
                e.at + width - tile
            }
        };
        [piece(tile * NARROWEST), piece(tile)]
    });
    for start in starts.chain([ends.0, ends.0 + tile * (NARROWEST - 1.0)]) {
        let first = start - ((start - ends.0) / pitch + 1e-9).ceil() * pitch;
        let moved = between(
            ends,
            from(
                first,
                ((ends.1 - first) / pitch).ceil() as usize,
                pitch,
                tile,
            ),
        );
        let count = slivers(ends, &moved, &inside, tile);
        if count < best.0 {
            best = (count, moved);
        }
    }
    best.1
}

/// The tiles that reach between two ends, cut there.
fn between(ends: (f64, f64), tiles: Vec<(f64, f64)>) -> Vec<(f64, f64)> {
    let cut = tiles
        .into_iter()
        .map(|t| (t.0.max(ends.0), t.1.min(ends.1)));
    cut.filter(|t| t.1 - t.0 > 1e-6).collect()
}

/// How many pieces at the ends and beside openings are narrower than a third of a tile.
fn slivers(ends: (f64, f64), tiles: &[(f64, f64)], edges: &[Edge], tile: f64) -> usize {
    let narrow = |width: f64| 1e-6 < width && width < tile * NARROWEST - 1e-6;
    let ends = [
        Edge {
            at: ends.0,
            left: false,
        },
        Edge {
            at: ends.1,
            left: true,
        },
    ];
    let left = |e: &Edge| {
        let cut = tiles.iter().find(|t| t.0 <= e.at && e.at <= t.1);
        cut.is_some_and(|t| narrow(if e.left { e.at - t.0 } else { t.1 - e.at }))
    };
    edges.iter().chain(&ends).filter(|e| left(e)).count()
}

/// Left and right edge of each tile of a row: symmetric about the middle, as many whole tiles as leave none at the ends
/// narrower than a third.
fn symmetric(ends: (f64, f64), asked: &TileBand) -> Vec<(f64, f64)> {
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::sample::tile_band;

    fn alone(room: f64) -> Vec<(f64, f64)> {
        columns((0.0, room), &tile_band(), &[])
    }

    fn opening(s0: f64, s1: f64, z0: f64, z1: f64) -> FaceOpening {
        FaceOpening {
            name: String::new(),
            kind: None,
            index: 0,
            s0,
            s1,
            z0,
            z1,
        }
    }

    fn band() -> Band {
        Band {
            layer: crate::plan::Layer {
                inner: 18.0,
                outer: 28.0,
            },
            rows: vec![(700.0, 850.0)],
            foot: 697.0,
        }
    }

    #[test]
    fn a_front_through_the_band_divides_it() {
        // 400 on each side: two whole tiles would leave (400 − 300 − 9) / 2 = 45.5, less than 50; one leaves 122.
        let front = [opening(400.0, 600.0, 650.0, 850.0)];
        let parts = stretches((0.0, 1000.0), &band(), &front);
        assert_eq!(parts, [(0.0, 400.0), (600.0, 1000.0)]);
        let tiles = columns(parts[1], &tile_band(), &edges(&band(), &front));
        assert_eq!(tiles, [(600.0, 722.0), (725.0, 875.0), (878.0, 1000.0)]);
    }

    #[test]
    fn tiles_are_moved_where_a_door_head_would_leave_a_sliver() {
        // Symmetric tiles start at 272 and 578: beside a door from 300 to 700 they would leave 28 and 28.
        let door = [opening(300.0, 700.0, 300.0, 800.0)];
        let edges = edges(&band(), &door);
        let ends = (0.0, 1000.0);
        assert_eq!(
            slivers(ends, &symmetric(ends, &tile_band()), &edges, 150.0),
            2
        );
        let tiles = columns(ends, &tile_band(), &edges);
        assert_eq!(slivers(ends, &tiles, &edges, 150.0), 0, "{tiles:?}");
        assert!((tiles[0].0, tiles[tiles.len() - 1].1) == ends);
        assert!(
            tiles
                .windows(2)
                .all(|t| (t[1].0 - t[0].1 - 3.0).abs() < 1e-9)
        );
        assert!(tiles.iter().all(|t| t.1 - t.0 <= 150.0 + 1e-9));
    }

    #[test]
    fn end_tiles_are_equal_and_never_narrower_than_a_third() {
        // 150 tiles, 3 joints. 1000: six whole ones would leave (1000 − 900 − 21) / 2 = 39.5 at the ends, less than 50;
        // five leave (1000 − 750 − 18) / 2 = 116.
        let tiles = alone(1000.0);
        assert_eq!(tiles.len(), 7);
        assert_eq!((tiles[0], tiles[6]), ((0.0, 116.0), (884.0, 1000.0)));
        assert_eq!((tiles[1], tiles[5]), ((119.0, 269.0), (731.0, 881.0)));
    }

    #[test]
    fn a_face_of_whole_tiles_has_none_cut_and_a_short_one_has_one() {
        // 6 · 150 + 5 · 3 = 915.
        let tiles = alone(915.0);
        assert!(tiles.len() == 6 && tiles.iter().all(|t| t.1 - t.0 == 150.0));
        assert_eq!(alone(100.0), [(0.0, 100.0)]);
        assert!(alone(9.0).is_empty());
    }
}
