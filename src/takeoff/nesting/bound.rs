//! What no layout can undercut.

use super::cover::least_cover;
use super::shop::{Blank, Rectangle, Shop, Size};

/// A share below which a side counts for nothing and above whose complement it counts for the whole; between, for what
/// it is.
///
/// Such a weighing never lets the sides that fit in a row on a sheet weigh more than the sheet (S. P. Fekete, J. Schepers,
/// "A general framework for bounds for higher-dimensional orthogonal packing problems", 2004), and neither does the
/// product of two of them over rectangles that fit on a sheet.
const SHARES: [(u64, u64); 4] = [(0, 1), (1, 4), (1, 3), (1, 2)];

/// A cost that no layout undercuts.
///
/// Each rectangle weighs at least its cheapest share of a sheet's cost over the sheets and the ways it may lie on, by area
/// or by [`SHARES`] of the sides; the sum of all is then a bound with several sheets and prices too. It is raised to
/// the least sum of prices whose sheets have the area and whose cost reaches it.
pub(super) fn bound(shop: &Shop) -> u64 {
    if shop.rectangles.is_empty() {
        return 0;
    }
    let single = shop
        .rectangles
        .iter()
        .filter_map(|r| fitting(shop, r).map(|b| b.cost).min())
        .max();
    let weighed = SHARES
        .iter()
        .flat_map(|x| SHARES.iter().map(move |y| (*x, *y)))
        .map(|shares| weight(shop, shares))
        .fold(0.0, f64::max);
    // What rounding errors of a sum of this many could have added is taken off.
    let slack = 1e-15 * (shop.rectangles.len() as f64 + 16.0);
    let floor = (weighed * (1.0 - slack)).ceil() as u64;
    least_cover(shop, floor.max(single.unwrap_or(0)))
}

fn fitting<'a>(shop: &'a Shop, rectangle: &'a Rectangle) -> impl Iterator<Item = &'a Blank> {
    shop.blanks.iter().filter(|b| Shop::fits(rectangle, b))
}

fn weight(shop: &Shop, shares: ((u64, u64), (u64, u64))) -> f64 {
    shop.rectangles
        .iter()
        .map(|r| {
            fitting(shop, r)
                .flat_map(|b| ways_on(r, b).map(|size| b.cost as f64 * worth(size, b.size, shares)))
                .fold(f64::INFINITY, f64::min)
        })
        .sum()
}

fn ways_on(rectangle: &Rectangle, blank: &Blank) -> impl Iterator<Item = Size> + use<> {
    let room = blank.size;
    rectangle
        .ways()
        .map(|(size, _)| size)
        .filter(move |size| room.holds(*size))
}

fn worth(piece: Size, sheet: Size, (x, y): ((u64, u64), (u64, u64))) -> f64 {
    side(piece.w, sheet.w, x) * side(piece.h, sheet.h, y)
}

fn side(piece: u64, sheet: u64, (over, under): (u64, u64)) -> f64 {
    let [piece, sheet] = [u128::from(piece), u128::from(sheet)];
    let [over, under] = [u128::from(over), u128::from(under)];
    if piece * under < over * sheet {
        0.0
    } else if (sheet - piece) * under < over * sheet {
        1.0
    } else {
        piece as f64 / sheet as f64
    }
}
