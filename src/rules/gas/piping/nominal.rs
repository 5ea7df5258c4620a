//! Nominal sizes of schedule 40 steel pipe.

use crate::units::{Length, Notation};

/// A nominal size of schedule 40 steel pipe.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Nominal {
    /// 1/2 in, DN 15.
    Half,
    /// 3/4 in, DN 20.
    ThreeQuarters,
    /// 1 in, DN 25.
    One,
    /// 1-1/4 in, DN 32.
    OneAndAQuarter,
}

/// How far a written size may be off its name, millimetres: no two names are nearer than 0.2 mm.
const OFF: f64 = 0.1;

impl Nominal {
    /// All of them, the smallest first.
    pub const ALL: [Self; 4] = [
        Self::Half,
        Self::ThreeQuarters,
        Self::One,
        Self::OneAndAQuarter,
    ];

    /// The size of a name in inches or by DN; `None` for any other.
    pub fn named(size: Length) -> Option<Self> {
        let is = |mm: f64| (size.mm() - mm).abs() <= OFF;
        Self::ALL.into_iter().find(|n| {
            let (inches, dn) = n.names();
            is(inches * 25.4) || is(dn)
        })
    }

    /// Its name in inches, and its DN.
    fn names(self) -> (f64, f64) {
        match self {
            Self::Half => (0.5, 15.0),
            Self::ThreeQuarters => (0.75, 20.0),
            Self::One => (1.0, 25.0),
            Self::OneAndAQuarter => (1.25, 32.0),
        }
    }

    /// Its name in messages: in inches, or by DN where a file is written in millimetres.
    pub fn name_in(self, notation: Notation) -> &'static str {
        match (notation, self) {
            (Notation::Imperial, _) => self.name(),
            (Notation::Metric, Self::Half) => "DN 15",
            (Notation::Metric, Self::ThreeQuarters) => "DN 20",
            (Notation::Metric, Self::One) => "DN 25",
            (Notation::Metric, Self::OneAndAQuarter) => "DN 32",
        }
    }

    /// Its name in inches.
    pub fn name(self) -> &'static str {
        match self {
            Self::Half => "1/2 in",
            Self::ThreeQuarters => "3/4 in",
            Self::One => "1 in",
            Self::OneAndAQuarter => "1-1/4 in",
        }
    }

    /// Its inside diameter (NFPA 54 / IFGC Table 402.4(2)).
    pub fn inside(self) -> Length {
        Length::inches(match self {
            Self::Half => 0.622,
            Self::ThreeQuarters => 0.824,
            Self::One => 1.049,
            Self::OneAndAQuarter => 1.380,
        })
    }

    /// Its outside diameter (ASME B36.10, value from memory).
    pub fn outside(self) -> Length {
        Length::inches(match self {
            Self::Half => 0.840,
            Self::ThreeQuarters => 1.050,
            Self::One => 1.315,
            Self::OneAndAQuarter => 1.660,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_size_is_known_by_either_name() {
        assert_eq!(
            Nominal::named(Length::inches(0.75)),
            Some(Nominal::ThreeQuarters)
        );
        assert_eq!(
            Nominal::named(Length::millimetres(20.0)),
            Some(Nominal::ThreeQuarters)
        );
        assert_eq!(
            Nominal::named(Length::millimetres(25.0)),
            Some(Nominal::One)
        );
        assert_eq!(Nominal::named(Length::inches(1.0)), Some(Nominal::One));
        assert_eq!(Nominal::named(Length::inches(0.875)), None);
        for size in Nominal::ALL {
            let dn: f64 = size.name_in(Notation::Metric)[3..].parse().unwrap();
            assert_eq!(Nominal::named(Length::millimetres(dn)), Some(size));
        }
    }

    #[test]
    fn walls_are_those_of_schedule_40() {
        // ASME B36.10, values from memory: .109 .113 .133 .140 in.
        let walls = [0.109, 0.113, 0.133, 0.140];
        for (size, wall) in Nominal::ALL.into_iter().zip(walls) {
            let found = (size.outside() - size.inside()).in_inches() / 2.0;
            assert!((found - wall).abs() < 6e-4, "{}: {found}", size.name());
        }
    }
}
