//! Which sums of prices are possible at all.

use super::shop::Shop;

/// How many counts of sheets are tried.
const TRIES: u32 = 20_000;

/// The least cost of whole sheets that reaches a floor and whose area, kerf added, is that of the pieces.
///
/// Where there would be too many counts to try, the floor raised to the prices' common measure.
pub(super) fn least_cover(shop: &Shop, floor: u64) -> u64 {
    let measure = shop.blanks.iter().map(|b| b.cost).fold(0, common_measure);
    if measure == 0 {
        return 0;
    }
    let rounded = floor.checked_next_multiple_of(measure).unwrap_or(floor);
    let area = |size: super::shop::Size| u128::from(size.w) * u128::from(size.h);
    let mut kinds: Vec<_> = shop
        .blanks
        .iter()
        .map(|b| (u128::from(b.cost), area(b.size)))
        .collect();
    if kinds.iter().any(|k| k.0 == 0) {
        return rounded;
    }
    // The largest first: they leave the fewest counts to try.
    kinds.sort_by_key(|k| std::cmp::Reverse((k.1, k.0)));
    let need = (
        u128::from(floor),
        shop.rectangles.iter().map(|r| area(r.size)).sum(),
    );
    let mut search = Search {
        kinds: &kinds,
        best: u128::MAX,
        tries: TRIES,
    };
    match search.rest(0, need, 0) {
        Some(()) => u64::try_from(search.best).unwrap_or(u64::MAX).max(rounded),
        None => rounded,
    }
}

fn common_measure(a: u64, b: u64) -> u64 {
    if b == 0 { a } else { common_measure(b, a % b) }
}

struct Search<'a> {
    /// Cost and area of each.
    kinds: &'a [(u128, u128)],
    best: u128,
    tries: u32,
}

impl Search<'_> {
    /// Covers what is still needed with the kinds from `kind` on; `None` when the tries are used up.
    fn rest(&mut self, kind: usize, need: (u128, u128), paid: u128) -> Option<()> {
        let Some(&(cost, area)) = self.kinds.get(kind) else {
            return Some(());
        };
        let enough = need.0.div_ceil(cost).max(need.1.div_ceil(area));
        if kind + 1 == self.kinds.len() {
            self.best = self.best.min(paid + enough * cost);
            return Some(());
        }
        for count in (0..=enough).rev() {
            self.tries = self.tries.checked_sub(1)?;
            let spent = count * cost;
            let left = (
                need.0.saturating_sub(spent),
                need.1.saturating_sub(count * area),
            );
            if paid + spent < self.best {
                self.rest(kind + 1, left, paid + spent)?;
            }
        }
        Some(())
    }
}
