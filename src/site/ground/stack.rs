//! Packs of shims: the fewest pieces of the thicknesses at hand that come near enough to a height.

use crate::units::Length;

/// Thicknesses are counted in steps of an eighth of a micrometre: whole millimetres and sixty-fourths of an inch are whole
/// numbers of them.
const STEP: f64 = 0.000_125;
/// As many rungs the ladder of heights has at most; finer or higher ones are packed largest first.
const RUNGS: u64 = 200_000;

/// What can be stacked of some thicknesses.
#[derive(Clone, Debug, PartialEq)]
pub struct Stacks {
    /// In steps, the thinnest first.
    shims: Vec<u64>,
    /// From one rung of the ladder to the next, in steps: the largest measure that all thicknesses have in common.
    rung: u64,
    /// For each rung the fewest pieces and the thickest shim of a stack that reaches it; none where none does.
    ladder: Vec<Option<(u32, usize)>>,
}

impl Stacks {
    /// Stacks of some thicknesses, the thinnest first, up to a height.
    pub fn new(thicknesses: &[Length], highest: f64) -> Self {
        let shims = thicknesses
            .iter()
            .map(|t| (t.mm() / STEP).round().max(1.0) as u64);
        let shims: Vec<u64> = shims.collect();
        let rung = shims.iter().copied().fold(0, common).max(1);
        let top = (highest.max(0.0) / STEP).min(1e15) as u64 + shims.first().copied().unwrap_or(0);
        let rungs = top / rung + 1;
        let mut ladder: Vec<Option<(u32, usize)>> = Vec::new();
        if rungs <= RUNGS {
            for at in 0..rungs {
                let fewest = if at == 0 {
                    Some((0, 0))
                } else {
                    fewest(&shims, rung, at, &ladder)
                };
                ladder.push(fewest);
            }
        }
        Self {
            shims,
            rung,
            ladder,
        }
    }

    /// How many of each thickness, the thinnest first, make up a height to within half the thinnest: as few pieces as can
    /// be, of as few those that come nearest, of as near those that stay below. A height of nothing or less takes none.
    pub fn of(&self, height: f64) -> Vec<u32> {
        let wanted = (height.max(0.0) / STEP).min(1e15);
        let mut counts = vec![0; self.shims.len()];
        let Some(&thinnest) = self.shims.first() else {
            return counts;
        };
        let half = thinnest as f64 / 2.0;
        let low = ((wanted - half) / self.rung as f64).ceil().max(0.0) as usize;
        let high = ((wanted + half) / self.rung as f64).floor() as usize;
        let rungs = (low..=high).filter_map(|at| Some((at, (*self.ladder.get(at)?)?.0)));
        let off = |at: usize| (at as f64 * self.rung as f64 - wanted).abs();
        let best = rungs.reduce(|best, next| {
            let nearer = next.1 == best.1 && off(next.0) < off(best.0) - 1e-6;
            if next.1 < best.1 || nearer {
                next
            } else {
                best
            }
        });
        match best {
            Some((mut at, _)) => {
                while let Some(Some((_, shim))) = self.ladder.get(at).filter(|_| at > 0) {
                    counts[*shim] += 1;
                    at -= (self.shims[*shim] / self.rung) as usize;
                }
            }
            None => largest_first(&self.shims, wanted, &mut counts),
        }
        counts
    }

    /// The height of so many of each thickness, millimetres.
    pub fn height(&self, counts: &[u32]) -> f64 {
        let steps = self.shims.iter().zip(counts);
        let steps: u64 = steps.map(|(s, n)| s.saturating_mul(u64::from(*n))).sum();
        steps as f64 * STEP
    }
}

/// The largest number that divides both.
fn common(a: u64, b: u64) -> u64 {
    if b == 0 { a } else { common(b, a % b) }
}

/// The fewest pieces that reach a rung from those below it; of as few, with the thickest shim on top.
fn fewest(
    shims: &[u64],
    rung: u64,
    at: u64,
    below: &[Option<(u32, usize)>],
) -> Option<(u32, usize)> {
    let from = |(i, shim): (usize, &u64)| {
        let under = at.checked_sub(shim / rung)?;
        let (pieces, _) = (*below.get(under as usize)?)?;
        Some((pieces.saturating_add(1), i))
    };
    let all = shims.iter().enumerate().rev().filter_map(from);
    all.reduce(|best, next| if next.0 < best.0 { next } else { best })
}

/// The thickest that fits, again and again, and one more of the thinnest where half of it or more is left.
fn largest_first(shims: &[u64], wanted: f64, counts: &mut [u32]) {
    let mut left = wanted;
    for (shim, count) in shims.iter().zip(counts.iter_mut()).rev() {
        let pieces = (left / *shim as f64)
            .floor()
            .clamp(0.0, f64::from(u32::MAX - 1));
        *count = pieces as u32;
        left -= pieces * *shim as f64;
    }
    if let (Some(shim), Some(count)) = (shims.first(), counts.first_mut())
        && left >= *shim as f64 / 2.0
    {
        *count += 1;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn inches(of: &[f64]) -> Vec<Length> {
        of.iter().map(|t| Length::inches(*t)).collect()
    }

    #[test]
    fn packs_as_on_paper() {
        let stacks = Stacks::new(&inches(&[0.0625, 0.125, 0.25, 0.5]), 100.0);
        let of = |height: f64| stacks.of(height * 25.4);
        assert_eq!(of(0.0), [0, 0, 0, 0]);
        assert_eq!(of(0.03), [0, 0, 0, 0]);
        assert_eq!(of(0.04), [1, 0, 0, 0]);
        // 1-7/16 = 1/2 + 1/2 + 1/4 + 1/8 + 1/16.
        assert_eq!(of(1.4375), [1, 1, 1, 2]);
        assert_eq!(of(-1.0), [0, 0, 0, 0]);
        // Largest first would take 1 + 1/4 + 1/4.
        let odd = Stacks::new(&inches(&[0.25, 0.75, 1.0]), 100.0);
        assert_eq!(odd.of(1.5 * 25.4), [0, 2, 0]);
        // 3, 5 and 20 mm: 22 is within 1.5 of 23 = 20 + 3 and of nothing else in two pieces.
        let metric = [3.0, 5.0, 20.0].map(Length::millimetres);
        assert_eq!(Stacks::new(&metric, 50.0).of(22.0), [1, 0, 1]);
        assert_eq!(Stacks::new(&[], 50.0).of(22.0), Vec::<u32>::new());
    }

    #[test]
    fn thicknesses_without_a_common_measure_are_packed_largest_first() {
        let odd = [1.0001, 3.1513].map(Length::millimetres);
        let stacks = Stacks::new(&odd, 1e4);
        assert!(stacks.ladder.is_empty());
        assert_eq!(stacks.of(7.3), [1, 2]);
        let huge = Stacks::new(&odd, 1e300);
        assert!(huge.of(1e300)[1] > 0);
        let _ = huge.of(f64::NAN);
    }

    proptest! {
        #[test]
        fn a_pack_is_within_half_the_thinnest_shim(steps in proptest::collection::btree_set(1_u32..64, 1..6), inch in any::<bool>(), height in -20.0..400.0f64) {
            let unit = if inch { 25.4 / 64.0 } else { 0.5 };
            let shims: Vec<Length> = steps.iter().map(|s| Length::millimetres(f64::from(*s) * unit)).collect();
            let stacks = Stacks::new(&shims, 400.0);
            let packed = stacks.height(&stacks.of(height));
            prop_assert!(packed >= 0.0);
            prop_assert!((packed - height.max(0.0)).abs() <= shims[0].mm() / 2.0 + 1e-3);
        }

        #[test]
        fn no_pack_of_fewer_pieces_is_as_near(steps in proptest::collection::btree_set(1_u32..24, 1..4), height in 0.0..40.0f64) {
            // By trying all of at most four pieces of each.
            let shims: Vec<Length> = steps.iter().map(|s| Length::millimetres(f64::from(*s) / 2.0)).collect();
            let stacks = Stacks::new(&shims, 60.0);
            let counts = stacks.of(height);
            let pieces: u32 = counts.iter().sum();
            for code in 0..5_u32.pow(shims.len() as u32) {
                let tried: Vec<u32> = (0..shims.len()).map(|i| code / 5_u32.pow(i as u32) % 5).collect();
                let near = (stacks.height(&tried) - height).abs() <= shims[0].mm() / 2.0;
                prop_assert!(!near || tried.iter().sum::<u32>() >= pieces, "{tried:?} before {counts:?}");
            }
        }
    }
}
