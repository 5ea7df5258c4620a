//! The air that a room with a gas appliance needs, by what the gas weighs.

use super::needs::Need;
use super::piping::Gas;
use super::vents::{Between, Vent};

/// A room with a gas appliance.
#[derive(Clone, Copy, Debug)]
pub(super) struct Room<'a> {
    /// Its floor above the datum, millimetres.
    pub(super) floor: f64,
    /// Its top.
    pub(super) top: f64,
    /// Its openings.
    pub(super) vents: &'a [Vent],
}

impl Room<'_> {
    /// What it needs: `each` is the free area of one opening, `floor_band` how far above the floor the upper edge of an
    /// opening for propane may be.
    ///
    /// Natural gas is lighter than air: it leaves through an opening in the upper third, and air comes in through one in the
    /// lower half. Propane is heavier: it leaves through two openings at the floor.
    pub(super) fn needs(&self, gas: Gas, each: f64, floor_band: f64) -> Vec<Need> {
        let height = (self.top - self.floor).max(0.0);
        let free = |wanted: &dyn Fn(&Vent) -> bool| -> Between {
            self.vents
                .iter()
                .filter(|v| wanted(v))
                .map(|v| v.free)
                .sum()
        };
        match gas {
            Gas::Natural => vec![
                Need {
                    what: "openings in the upper third, where natural gas leaves",
                    has: free(&|v| v.high >= self.top - height / 3.0),
                    asked: each,
                },
                Need {
                    what: "openings in the lower half, where air comes in",
                    has: free(&|v| v.high <= self.floor + height / 2.0),
                    asked: each,
                },
            ],
            Gas::Propane => {
                let at_floor: Vec<_> = self
                    .vents
                    .iter()
                    .filter(|v| v.high <= self.floor + floor_band + 1e-6)
                    .collect();
                vec![Need {
                    what: "two openings at the floor, where propane leaves, each",
                    has: super::vents::best_pair(&at_floor, |_, _| true),
                    asked: each,
                }]
            }
        }
    }

    /// How far below the top the upper edge of the highest opening is that lets anything through.
    pub(super) fn pocket(&self) -> Option<f64> {
        let open = self.vents.iter().filter(|v| v.free.most > 0.0);
        let edges = open.map(|v| self.top - v.high);
        edges.reduce(f64::min)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::diagnostics::Verdict;
    use crate::geometry::Vector2;
    use proptest::prelude::*;

    const SQUARE_INCH: f64 = 645.16;

    fn vent(low: f64, high: f64, area: f64) -> Vent {
        Vent {
            name: String::new(),
            outward: Vector2::new(1.0, 0.0),
            low,
            high,
            free: Between::known(area * SQUARE_INCH),
            opening: 0,
        }
    }

    fn worst(gas: Gas, vents: &[Vent]) -> Verdict {
        let room = Room {
            floor: 50.0,
            top: 850.0,
            vents,
        };
        let needs = room.needs(gas, 10.0 * SQUARE_INCH, 127.0);
        needs
            .iter()
            .map(Need::verdict)
            .max()
            .unwrap_or(Verdict::Pass)
    }

    #[test]
    fn each_gas_leaves_by_its_own_way() {
        // Common practice: 10 sq in in each opening; high and low for natural gas, two at the floor for propane.
        let (high, low) = (vent(700.0, 780.0, 12.0), vent(60.0, 140.0, 12.0));
        let both = [high.clone(), low.clone()];
        assert_eq!(worst(Gas::Natural, &both), Verdict::Pass);
        assert_eq!(worst(Gas::Propane, &both), Verdict::Fail);
        let floor = [low.clone(), low.clone()];
        assert_eq!(worst(Gas::Natural, &floor), Verdict::Fail);
        assert_eq!(worst(Gas::Propane, &floor), Verdict::Pass);
        assert_eq!(worst(Gas::Natural, &[high]), Verdict::Fail);
    }

    #[test]
    fn a_vent_that_lets_nothing_through_does_not_empty_the_top() {
        // Worked on paper: 850 - 780 = 70 mm left above an open vent, 850 - 140 = 710 where the upper one is shut.
        let vents = |area| [vent(700.0, 780.0, area), vent(60.0, 140.0, 12.0)];
        let left = |area| {
            let vents = vents(area);
            let room = Room {
                floor: 50.0,
                top: 850.0,
                vents: &vents,
            };
            room.pocket()
        };
        assert_eq!((left(12.0), left(0.0)), (Some(70.0), Some(710.0)));
    }

    proptest! {
        #[test]
        fn more_vent_area_is_never_worse(
            areas in proptest::collection::vec(0.0..30.0f64, 4),
            which in 0..4usize,
            more in 0.0..30.0f64,
        ) {
            let heights = [(60.0, 140.0), (60.0, 150.0), (700.0, 780.0), (400.0, 480.0)];
            let make = |areas: &[f64]| -> Vec<Vent> {
                heights.iter().zip(areas).map(|(h, a)| vent(h.0, h.1, *a)).collect()
            };
            let mut wider = areas.clone();
            wider[which] += more;
            for gas in [Gas::Natural, Gas::Propane] {
                prop_assert!(worst(gas, &make(&wider)) <= worst(gas, &make(&areas)));
            }
        }
    }
}
