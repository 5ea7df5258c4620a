//! The room for a propane cylinder, by two editions of the standard for cylinder enclosures (ANSI Z21.58/CSA 1.6).

use super::needs::Need;
use super::vents::{Between, Vent, best_pair, opposite, quarter_apart};

/// One pound in kilograms, exact.
const POUND: f64 = 0.453_592_37;
/// One square inch in square millimetres, exact.
const SQUARE_INCH: f64 = 645.16;

/// A room for a cylinder.
#[derive(Clone, Copy, Debug)]
pub(super) struct Enclosure<'a> {
    /// Its floor above the datum, millimetres.
    pub(super) floor: f64,
    /// Its top.
    pub(super) top: f64,
    /// The cylinder's valve.
    pub(super) valve: f64,
    /// The propane in it, kilograms.
    pub(super) capacity: f64,
    /// Its openings.
    pub(super) vents: &'a [Vent],
    /// True when one side is fully open: that always serves.
    pub(super) open_side: bool,
}

/// The figures of both editions; areas in square millimetres, lengths in millimetres, shares in square inches a pound.
#[derive(Clone, Copy, Debug)]
pub(super) struct Figures {
    pub(super) least_opening: f64,
    pub(super) a_per_pound: f64,
    pub(super) b_high_per_pound: f64,
    pub(super) b_low_per_pound: f64,
    pub(super) floor_band: f64,
    pub(super) floor_edge: f64,
    pub(super) top_band: f64,
    pub(super) valve_level: f64,
}

impl Enclosure<'_> {
    fn area(&self, per_pound: f64) -> f64 {
        self.capacity / POUND * per_pound * SQUARE_INCH
    }

    fn those(&self, wanted: impl Fn(&&Vent) -> bool) -> Vec<&Vent> {
        self.vents.iter().filter(wanted).collect()
    }

    /// Edition A: two or more openings at valve level on opposite sides, and as much at the floor.
    pub(super) fn edition_a(&self, f: &Figures) -> Vec<Need> {
        if self.open_side {
            return Vec::new();
        }
        let asked = self.area(f.a_per_pound).max(f.least_opening);
        let at_valve = self
            .those(|v| v.low <= self.valve + f.valve_level && v.high >= self.valve - f.valve_level);
        let at_floor = self.those(|v| v.high <= self.floor + f.floor_band + 1e-6);
        vec![
            Need {
                what: "two openings at the valve's level on opposite sides, each",
                has: best_pair(&at_valve, opposite),
                asked,
            },
            Need {
                what: "two openings at the floor on opposite sides, each",
                has: best_pair(&at_floor, opposite),
                asked,
            },
        ]
    }

    /// Edition B: two or more openings near the top, a quarter turn apart, and some at the floor.
    pub(super) fn edition_b(&self, f: &Figures) -> Vec<Need> {
        if self.open_side {
            return Vec::new();
        }
        let near_top = self.those(|v| v.low >= self.top - f.top_band - 1e-6);
        let at_floor = self.those(|v| {
            v.low <= self.floor + f.floor_edge + 1e-6 && v.high <= self.floor + f.floor_band + 1e-6
        });
        let open = |v: &Vent| v.free.most > 0.0;
        let apart = near_top.iter().enumerate().any(|(i, a)| {
            let others = near_top[i + 1..].iter();
            others
                .into_iter()
                .any(|b| quarter_apart(a, b) && open(a) && open(b))
        });
        let high: Between = near_top.iter().filter(|_| apart).map(|v| v.free).sum();
        vec![
            Need {
                what: "two openings near the top, at least 90 degrees apart, together",
                has: high,
                asked: self.area(f.b_high_per_pound),
            },
            Need {
                what: "openings at the floor, together",
                has: at_floor.iter().map(|v| v.free).sum(),
                asked: self.area(f.b_low_per_pound),
            },
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::diagnostics::Verdict;
    use crate::geometry::Vector2;
    use proptest::prelude::*;

    const INCH: f64 = 25.4;

    const FIGURES: Figures = Figures {
        least_opening: 10.0 * SQUARE_INCH,
        a_per_pound: 0.5,
        b_high_per_pound: 1.0,
        b_low_per_pound: 0.5,
        floor_band: 5.0 * INCH,
        floor_edge: INCH,
        top_band: 5.0 * INCH,
        valve_level: 2.0 * INCH,
    };

    fn vent(x: f64, y: f64, low: f64, high: f64, area: f64) -> Vent {
        Vent {
            name: String::new(),
            outward: Vector2::new(x, y),
            low: low * INCH,
            high: high * INCH,
            free: Between::known(area * SQUARE_INCH),
            opening: 0,
        }
    }

    /// A 20 lb cylinder on a floor at 2 in under a top at 33 in, its valve 15 in above the floor.
    fn room(vents: &[Vent], pounds: f64) -> Enclosure<'_> {
        Enclosure {
            floor: 2.0 * INCH,
            top: 33.0 * INCH,
            valve: 17.0 * INCH,
            capacity: pounds * POUND,
            vents,
            open_side: false,
        }
    }

    fn worst(needs: &[Need]) -> Verdict {
        needs
            .iter()
            .map(Need::verdict)
            .max()
            .unwrap_or(Verdict::Pass)
    }

    #[test]
    fn twenty_pounds_by_edition_a() {
        // Published (ANSI Z21.58/CSA 1.6): a 20 lb cylinder asks for 10 sq in in each opening.
        let all = [
            vent(1.0, 0.0, 15.0, 18.0, 10.0),
            vent(-1.0, 0.0, 15.0, 18.0, 10.0),
            vent(1.0, 0.0, 3.0, 6.0, 10.0),
            vent(-1.0, 0.0, 3.0, 6.0, 10.0),
        ];
        let needs = room(&all, 20.0).edition_a(&FIGURES);
        assert!(
            needs
                .iter()
                .all(|n| (n.asked / SQUARE_INCH - 10.0).abs() < 1e-9)
        );
        assert_eq!(
            worst(&needs),
            Verdict::Caution,
            "just enough is a narrow margin"
        );
        // Smaller cylinders still ask for 10, larger ones for half a square inch a pound.
        let asked = |pounds| room(&all, pounds).edition_a(&FIGURES)[0].asked / SQUARE_INCH;
        assert!((asked(10.0) - 10.0).abs() < 1e-9 && (asked(30.0) - 15.0).abs() < 1e-9);
        let mut same_side = all.clone();
        same_side[1].outward = Vector2::new(0.0, 1.0);
        assert_eq!(
            worst(&room(&same_side, 20.0).edition_a(&FIGURES)),
            Verdict::Fail
        );
        let mut too_high = all.clone();
        too_high[2] = vent(1.0, 0.0, 5.0, 8.0, 10.0);
        assert_eq!(
            worst(&room(&too_high, 20.0).edition_a(&FIGURES)),
            Verdict::Fail
        );
    }

    #[test]
    fn twenty_pounds_by_edition_b() {
        // Published (ANSI Z21.58/CSA 1.6): a 20 lb cylinder asks for 20 sq in near the top and 10 at the floor.
        let all = [
            vent(1.0, 0.0, 29.0, 32.0, 12.0),
            vent(0.0, 1.0, 29.0, 32.0, 12.0),
            vent(1.0, 0.0, 2.5, 6.0, 12.0),
        ];
        let needs = room(&all, 20.0).edition_b(&FIGURES);
        let asked: Vec<_> = needs
            .iter()
            .map(|n| (n.asked / SQUARE_INCH).round())
            .collect();
        assert_eq!(asked, [20.0, 10.0]);
        assert_eq!(worst(&needs), Verdict::Pass);
        let mut one_side = all.clone();
        one_side[1].outward = Vector2::new(1.0, 0.0);
        assert_eq!(
            worst(&room(&one_side, 20.0).edition_b(&FIGURES)),
            Verdict::Fail
        );
        let mut lifted = all.clone();
        lifted[2] = vent(1.0, 0.0, 3.5, 6.5, 12.0);
        assert_eq!(
            worst(&room(&lifted, 20.0).edition_b(&FIGURES)),
            Verdict::Fail
        );
        let mut tall = all.clone();
        tall[2] = vent(1.0, 0.0, 2.5, 8.0, 30.0);
        assert_eq!(worst(&room(&tall, 20.0).edition_b(&FIGURES)), Verdict::Fail);
    }

    #[test]
    fn a_side_fully_open_always_serves_and_an_unknown_louvre_does_not() {
        let mut open = room(&[], 20.0);
        assert_eq!(worst(&open.edition_a(&FIGURES)), Verdict::Fail);
        open.open_side = true;
        assert_eq!(worst(&open.edition_a(&FIGURES)), Verdict::Pass);
        assert_eq!(worst(&open.edition_b(&FIGURES)), Verdict::Pass);
        let mut all = [
            vent(1.0, 0.0, 29.0, 32.0, 15.0),
            vent(-1.0, 0.0, 29.0, 32.0, 15.0),
            vent(1.0, 0.0, 2.0, 5.0, 15.0),
        ];
        assert_eq!(worst(&room(&all, 20.0).edition_b(&FIGURES)), Verdict::Pass);
        all[0].free.least = 0.0;
        assert_eq!(
            worst(&room(&all, 20.0).edition_b(&FIGURES)),
            Verdict::NotChecked
        );
    }

    proptest! {
        #[test]
        fn more_vent_area_is_never_worse(
            areas in proptest::collection::vec(0.0..30.0f64, 6),
            which in 0..6usize,
            more in 0.0..30.0f64,
            pounds in 1.0..40.0f64,
        ) {
            let sides = [(1.0, 0.0), (-1.0, 0.0), (1.0, 0.0), (-1.0, 0.0), (0.0, 1.0), (1.0, 0.0)];
            let heights = [(15.0, 18.0), (15.0, 18.0), (2.0, 6.0), (2.0, 6.0), (29.0, 32.0), (29.0, 32.0)];
            let make = |areas: &[f64]| -> Vec<Vent> {
                let each = sides.iter().zip(heights).zip(areas);
                each.map(|((s, h), a)| vent(s.0, s.1, h.0, h.1, *a)).collect()
            };
            let (before, mut wider) = (make(&areas), areas.clone());
            wider[which] += more;
            let after = make(&wider);
            let (before, after) = (room(&before, pounds), room(&after, pounds));
            prop_assert!(worst(&after.edition_a(&FIGURES)) <= worst(&before.edition_a(&FIGURES)));
            prop_assert!(worst(&after.edition_b(&FIGURES)) <= worst(&before.edition_b(&FIGURES)));
        }
    }
}
