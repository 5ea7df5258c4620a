//! Clearances in three dimensions: how far a box stands from an appliance's body on each of its sides.

use crate::geometry::{Bounds3, Point2};
use crate::plan::RunPlan;

/// A box in the coordinates of a run, millimetres: along it, away from its working face, above the datum.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Block {
    pub(super) u: (f64, f64),
    pub(super) v: (f64, f64),
    pub(super) z: (f64, f64),
}

impl Block {
    /// A box of the world as a run sees it.
    pub(super) fn seen_from(run: &RunPlan, world: &Bounds3) -> Self {
        let corner = |p: &crate::geometry::Point3| run.local(Point2::new(p.x, p.y));
        let (a, b) = (corner(&world.low), corner(&world.high));
        Self {
            u: (a.x.min(b.x), a.x.max(b.x)),
            v: (a.y.min(b.y), a.y.max(b.y)),
            z: (world.low.z, world.high.z),
        }
    }
}

/// A side of an appliance's body.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Toward {
    Beside,
    Behind,
    Before,
    Above,
    Below,
}

impl Toward {
    /// All of them.
    pub(super) const ALL: [Self; 5] = [
        Self::Beside,
        Self::Behind,
        Self::Before,
        Self::Above,
        Self::Below,
    ];

    /// How messages put it, before a name.
    pub(super) fn name(self) -> &'static str {
        match self {
            Self::Beside => "beside",
            Self::Behind => "behind",
            Self::Before => "in front of",
            Self::Above => "above",
            Self::Below => "below",
        }
    }
}

/// The distance from a body to a box on each side, in the order of [`Toward::ALL`]; below zero on the sides on which the
/// box is not.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Gaps([f64; 5]);

impl Gaps {
    /// The distances from a body to a box.
    pub(super) fn between(body: &Block, other: &Block) -> Self {
        let beside = (other.u.0 - body.u.1).max(body.u.0 - other.u.1);
        let behind = other.v.0 - body.v.1;
        let before = body.v.0 - other.v.1;
        let above = other.z.0 - body.z.1;
        let below = body.z.0 - other.z.1;
        Self([beside, behind, before, above, below])
    }

    /// The free distance on one side; zero where the box is not on that side.
    pub(super) fn toward(&self, side: Toward) -> f64 {
        self.0[side as usize].max(0.0)
    }

    /// True when the box reaches into the body.
    pub(super) fn meet(&self) -> bool {
        self.0.iter().all(|d| *d < -1e-6)
    }

    /// The side on which the box is farthest off for what is asked there, with the share of it that is kept. A box is clear
    /// of a body when it is clear of one side: the share is then one or more.
    pub(super) fn farthest(&self, asked: impl Fn(Toward) -> f64) -> (Toward, f64) {
        let share = |side: Toward| {
            let (gap, asked) = (self.toward(side), asked(side));
            // What asks for nothing is kept by a box that touches, but not by one that is on another side.
            if asked > 0.0 {
                gap / asked
            } else if self.0[side as usize] >= -1e-6 {
                f64::MAX
            } else {
                0.0
            }
        };
        let first = (Toward::Beside, share(Toward::Beside));
        Toward::ALL.into_iter().fold(first, |best, side| {
            let here = share(side);
            if here > best.1 { (side, here) } else { best }
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const BODY: Block = Block {
        u: (100.0, 800.0),
        v: (0.0, 500.0),
        z: (650.0, 900.0),
    };

    #[test]
    fn distances_are_those_of_a_tape_measure() {
        // Worked on paper: a post whose near corner is 200 beside and 100 behind, from the ground to far above.
        let post = Block {
            u: (1000.0, 1100.0),
            v: (600.0, 700.0),
            z: (0.0, 2400.0),
        };
        let gaps = Gaps::between(&BODY, &post);
        let found = Toward::ALL.map(|t| gaps.toward(t));
        assert_eq!(found, [200.0, 100.0, 0.0, 0.0, 0.0]);
        assert_eq!(gaps.farthest(|_| 250.0), (Toward::Beside, 0.8));
        let asked = |t| if t == Toward::Behind { 80.0 } else { 250.0 };
        assert_eq!(gaps.farthest(asked), (Toward::Behind, 1.25));
        let roof = Block {
            u: (-500.0, 2000.0),
            v: (-500.0, 900.0),
            z: (2500.0, 2700.0),
        };
        assert_eq!(Gaps::between(&BODY, &roof).toward(Toward::Above), 1600.0);
        let shelf = Block {
            z: (0.0, 400.0),
            ..roof
        };
        assert_eq!(Gaps::between(&BODY, &shelf).toward(Toward::Below), 250.0);
    }

    #[test]
    fn what_touches_keeps_a_distance_of_nothing_and_what_overlaps_does_not() {
        let behind = |from: f64| Block {
            u: (0.0, 900.0),
            v: (from, 700.0),
            z: (0.0, 2400.0),
        };
        let share = |b: &Block| Gaps::between(&BODY, b).farthest(|_| 0.0).1;
        assert!(share(&behind(500.0)) >= 1.0);
        assert_eq!(share(&behind(490.0)), 0.0);
        assert!(Gaps::between(&BODY, &behind(490.0)).meet());
        assert!(!Gaps::between(&BODY, &behind(500.0)).meet());
    }

    #[test]
    fn a_run_that_turns_sees_the_world_turned() {
        // Worked on paper: a run along -y from (3000, 800); what stands farther in x stands behind its working face.
        let run = RunPlan {
            origin: Point2::new(3000.0, 800.0),
            along: crate::geometry::Vector2::new(0.0, -1.0),
            away: crate::geometry::Vector2::new(1.0, 0.0),
            length: 2000.0,
            depth: 700.0,
            framed: (0.0, 2000.0),
        };
        let world = Bounds3 {
            low: crate::geometry::Point3::new(4000.0, 100.0, 0.0),
            high: crate::geometry::Point3::new(4100.0, 300.0, 2000.0),
        };
        let found = Block::seen_from(&run, &world);
        assert_eq!((found.u, found.v), ((500.0, 700.0), (1000.0, 1100.0)));
    }

    proptest! {
        #[test]
        fn what_moves_away_is_never_nearer(x in -3000.0..3000.0f64, y in -3000.0..3000.0f64, by in 0.0..500.0f64, asked in 1.0..900.0f64) {
            let at = |x: f64, y: f64| Block { u: (x, x + 90.0), v: (y, y + 90.0), z: (0.0, 2000.0) };
            let share = |b: &Block| Gaps::between(&BODY, b).farthest(|_| asked).1;
            let away = if y >= 0.0 { by } else { -by };
            prop_assert!(share(&at(x, y + away)) >= share(&at(x, y)) - 1e-12 || (-90.0..500.0).contains(&y));
        }
    }
}
