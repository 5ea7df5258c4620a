//! A box that leans: a level rectangle that shifts evenly as it goes up.

use super::{Bounds2, Bounds3, Point3, Vector2};

/// A post or wall as it stands, millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeaningBox {
    /// The ground it takes at its foot.
    pub foot: Bounds2,
    /// From where to where it reaches up.
    pub z: (f64, f64),
    /// How far its top stands beside its foot; zero where it is plumb.
    pub shift: Vector2,
}

impl LeaningBox {
    /// What it takes at a height between foot and top.
    pub fn at(&self, z: f64) -> Bounds2 {
        let high = self.z.1 - self.z.0;
        let share = if high > 0.0 {
            ((z - self.z.0) / high).clamp(0.0, 1.0)
        } else {
            0.0
        };
        Bounds2 {
            low: self.foot.low + self.shift * share,
            high: self.foot.high + self.shift * share,
        }
    }

    /// The upright box round all of it.
    pub fn bounds(&self) -> Bounds3 {
        self.between(self.z.0, self.z.1)
    }

    /// The upright box round what of it lies between two heights.
    pub fn between(&self, low: f64, high: f64) -> Bounds3 {
        let flat = self.at(low).union(self.at(high));
        Bounds3 {
            low: Point3::new(flat.low.x, flat.low.y, low),
            high: Point3::new(flat.high.x, flat.high.y, high),
        }
    }

    /// The upright boxes round slices of it from the foot up; one where it is plumb.
    pub fn slices(&self, count: u32) -> impl Iterator<Item = Bounds3> {
        let count = if self.shift == Vector2::zeros() {
            1
        } else {
            count.max(1)
        };
        let own = *self;
        let z = move |k: u32| own.z.0 + (own.z.1 - own.z.0) * f64::from(k) / f64::from(count);
        (0..count).map(move |k| own.between(z(k), z(k + 1)))
    }

    /// How far it is from an upright box at its nearest, and at which of its own heights; zero where they touch or overlap.
    pub fn nearest(&self, other: &Bounds3) -> (f64, f64) {
        let z = self.least(other, |gaps| gaps.map(|g| g.max(0.0).powi(2)).iter().sum());
        let gaps = self.gaps(other, z);
        let square: f64 = gaps.map(|g| g.max(0.0).powi(2)).iter().sum();
        (square.sqrt(), z)
    }

    /// True when it shares room with an upright box, deeper than `slack`.
    pub fn overlaps(&self, other: &Bounds3, slack: f64) -> bool {
        let deepest = |gaps: [f64; 3]| gaps.into_iter().fold(f64::NEG_INFINITY, f64::max);
        let z = self.least(other, deepest);
        deepest(self.gaps(other, z)) < -slack
    }

    /// How far its section at a height is from a box along each axis; below zero where they overlap along it.
    fn gaps(&self, other: &Bounds3, z: f64) -> [f64; 3] {
        let own = self.at(z);
        let flat = |i: usize| (other.low[i] - own.high[i]).max(own.low[i] - other.high[i]);
        let upright = if self.shift == Vector2::zeros() {
            (other.low.z - self.z.1).max(self.z.0 - other.high.z)
        } else {
            (other.low.z - z).max(z - other.high.z)
        };
        [flat(0), flat(1), upright]
    }

    /// The height at which a measure of the gaps is least. All gaps are convex along the height, so what never falls as they
    /// grow is too, and thirds close in on its least value.
    fn least(&self, other: &Bounds3, measure: impl Fn([f64; 3]) -> f64) -> f64 {
        let (mut low, mut high) = self.z;
        if self.shift == Vector2::zeros() {
            return low.max(other.low.z.min(high));
        }
        for _ in 0..120 {
            let third = (high - low) / 3.0;
            let (a, b) = (low + third, high - third);
            if measure(self.gaps(other, a)) <= measure(self.gaps(other, b)) {
                high = b;
            } else {
                low = a;
            }
        }
        f64::midpoint(low, high)
    }
}

#[cfg(test)]
mod tests {
    use super::super::Point2;
    use super::*;
    use proptest::prelude::*;

    fn post(shift: f64) -> LeaningBox {
        LeaningBox {
            foot: Bounds2 {
                low: Point2::new(0.0, 0.0),
                high: Point2::new(100.0, 100.0),
            },
            z: (0.0, 2000.0),
            shift: Vector2::new(shift, 0.0),
        }
    }

    fn block(x: f64, z: (f64, f64)) -> Bounds3 {
        Bounds3 {
            low: Point3::new(x, -500.0, z.0),
            high: Point3::new(x + 1000.0, 500.0, z.1),
        }
    }

    #[test]
    fn a_post_that_leans_is_nearest_at_the_counters_height() {
        // Leaning 40 in 2000 towards a counter from 850 to 900 whose edge is 130 from the foot: at 900 it has come 18
        // nearer, 112 - 100 of its own = 12 are left, level; square to the leaning side 12 / √(1 + .02²).
        let square = (1.0 + 0.02_f64.powi(2)).sqrt();
        let (gap, z) = post(40.0).nearest(&block(130.0, (850.0, 900.0)));
        assert!(
            (gap - 12.0 / square).abs() < 1e-6 && (z - 900.0).abs() < 1.0,
            "{gap} at {z}"
        );
        // Leaning away it is nearest at the counter's underside: 850 × .02 = 17 farther.
        let (gap, z) = post(-40.0).nearest(&block(130.0, (850.0, 900.0)));
        assert!(
            (gap - 47.0 / square).abs() < 1e-6 && (z - 850.0).abs() < 1.0,
            "{gap} at {z}"
        );
        assert_eq!(post(0.0).nearest(&block(130.0, (850.0, 900.0))).0, 30.0);
        assert!(post(90.0).overlaps(&block(130.0, (850.0, 900.0)), 0.01));
        assert!(!post(40.0).overlaps(&block(130.0, (850.0, 900.0)), 0.01));
        // Over its head: 3, 4 and so 5 apart.
        let above = block(103.0, (2004.0, 2100.0));
        assert!((post(0.0).nearest(&above).0 - 5.0).abs() < 1e-9);
    }

    proptest! {
        #[test]
        fn no_height_is_nearer_than_the_nearest(shift in -400.0..400.0f64, x in -1500.0..600.0f64, z in 0.0..2500.0f64, high in 10.0..900.0f64) {
            let (post, block) = (post(shift), block(x, (z, z + high)));
            let (gap, _) = post.nearest(&block);
            for k in 0..=400 {
                let section = post.at(f64::from(k) * 5.0);
                let gaps = [
                    (block.low.x - section.high.x).max(section.low.x - block.high.x),
                    (block.low.y - section.high.y).max(section.low.y - block.high.y),
                    (block.low.z - f64::from(k) * 5.0).max(f64::from(k) * 5.0 - block.high.z),
                ];
                let there = gaps.map(|g| g.max(0.0).powi(2)).iter().sum::<f64>().sqrt();
                prop_assert!(there >= gap - 1e-6);
            }
            // The boxes round its slices are nowhere farther off than it is.
            let slices = post.slices(12).map(|b| {
                let gap = |i: usize| (block.low[i] - b.high[i]).max(b.low[i] - block.high[i]).max(0.0).powi(2);
                (gap(0) + gap(1) + gap(2)).sqrt()
            });
            prop_assert!(slices.fold(f64::MAX, f64::min) <= gap + 1e-6);
        }
    }
}
