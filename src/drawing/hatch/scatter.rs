//! Marks scattered over a region, the same ones each time.

use super::lines::sides;
use crate::geometry::{Point2, Region, Vector2};

/// No region gets more marks of one pattern: they are strewn wider apart instead.
const MOST: f64 = 320.0;

/// A place for a mark.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Grain {
    /// Its middle on the sheet.
    pub at: Point2,
    /// Two numbers from 0 to 1 to vary it by.
    pub chance: [f64; 2],
}

/// Places about `apart` from each other whose surroundings of radius `clear` lie inside the region.
pub(super) fn strewn(region: &Region, apart: f64, clear: f64) -> Vec<Grain> {
    let bounds = region.outer.bounds();
    let wanted = bounds.width() * bounds.height() / (apart * apart);
    if !wanted.is_finite() {
        return Vec::new();
    }
    let apart = apart * (wanted / MOST).sqrt().max(1.0);
    let cells = |low: f64, high: f64| (low / apart).floor() as i64..=(high / apart).floor() as i64;
    let all: Vec<[Point2; 2]> = sides(region).collect();
    let mut grains = Vec::new();
    for row in cells(bounds.low.y, bounds.high.y) {
        for column in cells(bounds.low.x, bounds.high.x) {
            let [x, y, a, b] = chances(column, row);
            // Every second row half a step on, and each a little off its place.
            let shifted = if row.rem_euclid(2) == 0 { 0.25 } else { 0.75 };
            let place = Vector2::new(
                column as f64 + shifted + 0.4 * (x - 0.5),
                row as f64 + 0.5 + 0.5 * (y - 0.5),
            );
            let at = Point2::from(place * apart);
            if is_inside(&all, at, clear) {
                grains.push(Grain { at, chance: [a, b] });
            }
        }
    }
    grains
}

/// True when a disc lies inside.
pub(super) fn is_inside(sides: &[[Point2; 2]], at: Point2, clear: f64) -> bool {
    let mut inside = false;
    for [a, b] in sides {
        if (a.y > at.y) != (b.y > at.y) && at.x < a.x + (b.x - a.x) * (at.y - a.y) / (b.y - a.y) {
            inside = !inside;
        }
        let side = b - a;
        let share = side.dot(&(at - a)) / side.norm_squared().max(f64::MIN_POSITIVE);
        if (a + side * share.clamp(0.0, 1.0) - at).norm() < clear {
            return false;
        }
    }
    inside
}

/// Four numbers from 0 to 1 that look random and belong to a cell.
fn chances(column: i64, row: i64) -> [f64; 4] {
    let mut state = (column as u64).wrapping_mul(0x9E37_79B9_7F4A_7C15)
        ^ (row as u64).wrapping_mul(0xC2B2_AE3D_27D4_EB4F);
    [(); 4].map(|()| {
        // SplitMix64.
        state = state.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = state;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((z ^ (z >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    })
}
