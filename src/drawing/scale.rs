//! Standard scales.

use super::Scale;
use crate::units::Notation;

/// Inches on the paper for one foot built, as drawings spell them, largest first; the last few are for long islands.
const IMPERIAL: [(f64, &str); 11] = [
    (3.0, "3\""),
    (1.5, "1 1/2\""),
    (1.0, "1\""),
    (0.75, "3/4\""),
    (0.5, "1/2\""),
    (0.375, "3/8\""),
    (0.25, "1/4\""),
    (0.1875, "3/16\""),
    (0.125, "1/8\""),
    (0.0625, "1/16\""),
    (0.03125, "1/32\""),
];

/// Millimetres built for one on the paper: the series of ISO 5455, and 1:25 and 1:75, which scale rulers carry too.
const METRIC: [f64; 11] = [
    2.0, 5.0, 10.0, 20.0, 25.0, 50.0, 75.0, 100.0, 200.0, 500.0, 1000.0,
];

/// Larger scales that only details are drawn at: half size, a third and a quarter, and what follows when that is too large.
const DETAILS_METRIC: [f64; 4] = [2.0, 3.0, 4.0, 5.0];
const DETAILS_IMPERIAL: [(f64, &str); 3] = [(6.0, "6\""), (3.0, "3\""), (1.5, "1 1/2\"")];

/// Scales to choose from, largest first.
#[derive(Clone, Debug, PartialEq)]
pub struct Series {
    /// Those that serve.
    pub preferred: Vec<Scale>,
    /// Those to fall back on when what is drawn is too large for any of the preferred ones.
    pub others: Vec<Scale>,
}

impl Series {
    /// For sections: 1:20 or larger (1/2" to the foot, which is 1:24, where inches are used).
    pub fn sections(notation: Notation) -> Self {
        let smallest = match notation {
            Notation::Imperial => 1.0 / 24.0,
            Notation::Metric => 1.0 / 20.0,
        };
        let scales = standard(notation).into_iter();
        let (preferred, others) = scales.partition(|s| s.factor >= smallest - 1e-9);
        Self { preferred, others }
    }

    /// For details: 1:2 to 1:4.
    pub fn details(notation: Notation) -> Self {
        let scales: Vec<Scale> = match notation {
            Notation::Imperial => DETAILS_IMPERIAL.map(inches_to_the_foot).to_vec(),
            Notation::Metric => DETAILS_METRIC.map(one_to).to_vec(),
        };
        let (preferred, others) = scales.into_iter().partition(|s| s.factor >= 0.25 - 1e-9);
        Self { preferred, others }
    }
}

fn inches_to_the_foot((inches, name): (f64, &str)) -> Scale {
    Scale {
        factor: inches / 12.0,
        name: format!("{name} = 1'-0\""),
    }
}

fn one_to(ratio: f64) -> Scale {
    Scale {
        factor: 1.0 / ratio,
        name: format!("1:{ratio}"),
    }
}

fn standard(notation: Notation) -> Vec<Scale> {
    match notation {
        Notation::Imperial => IMPERIAL.map(inches_to_the_foot).to_vec(),
        Notation::Metric => METRIC.map(one_to).to_vec(),
    }
}

impl Scale {
    /// The largest standard scale at which something `built` wide and high fits into `room`, all in millimetres.
    ///
    /// What fits at none of them, which no island does, is drawn at the smallest.
    pub fn fitting(notation: Notation, built: (f64, f64), room: (f64, f64)) -> Self {
        let mut scales = standard(notation);
        let fits =
            |s: &Scale| built.0 * s.factor <= room.0 + 1e-9 && built.1 * s.factor <= room.1 + 1e-9;
        let number = scales.iter().position(fits).unwrap_or(scales.len() - 1);
        scales.swap_remove(number)
    }

    /// No scale: a sheet of words, tables or pictures that are not to be measured.
    pub fn none() -> Self {
        Self {
            factor: 1.0,
            name: "none".into(),
        }
    }

    /// True for a sheet on which nothing is to be measured: it has no scale bar.
    pub fn is_none(&self) -> bool {
        self.name == "none"
    }

    /// Full size.
    pub fn full() -> Self {
        Self {
            factor: 1.0,
            name: "1:1".into(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_largest_that_fits_is_taken() {
        // 12 ft on 15 in of paper: 1" to the foot takes 12 in, 1 1/2" would take 18 in.
        let built = (12.0 * 304.8, 3.0 * 304.8);
        let scale = Scale::fitting(Notation::Imperial, built, (15.0 * 25.4, 8.0 * 25.4));
        assert_eq!(scale.name, "1\" = 1'-0\"");
        assert!((scale.factor - 1.0 / 12.0).abs() < 1e-12);
        let scale = Scale::fitting(Notation::Metric, (3000.0, 900.0), (360.0, 200.0));
        assert_eq!(scale.name, "1:10");
    }

    #[test]
    fn details_are_half_size_to_a_quarter_and_sections_a_twentieth_or_larger() {
        let names = |scales: &[Scale]| scales.iter().map(|s| s.name.clone()).collect::<Vec<_>>();
        let metric = Series::details(Notation::Metric);
        assert_eq!(names(&metric.preferred), ["1:2", "1:3", "1:4"]);
        let imperial = Series::details(Notation::Imperial);
        assert_eq!(names(&imperial.preferred), ["6\" = 1'-0\"", "3\" = 1'-0\""]);
        assert!((imperial.preferred[0].factor - 0.5).abs() < 1e-12);
        let sections = Series::sections(Notation::Metric);
        assert_eq!(names(&sections.preferred), ["1:2", "1:5", "1:10", "1:20"]);
        let last = Series::sections(Notation::Imperial)
            .preferred
            .pop()
            .unwrap();
        assert_eq!(last.name, "1/2\" = 1'-0\"");
    }

    #[test]
    fn the_height_counts_too_and_nothing_is_too_large() {
        let tall = Scale::fitting(Notation::Metric, (100.0, 5100.0), (360.0, 200.0));
        assert_eq!(tall.name, "1:50");
        let huge = Scale::fitting(Notation::Metric, (1e9, 1e9), (360.0, 200.0));
        assert_eq!(huge.name, "1:1000");
    }
}
