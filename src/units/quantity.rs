//! The quantity types and the arithmetic that makes sense between them.

use std::ops::{Add, AddAssign, Div, Mul, Neg, Sub, SubAssign};

macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            /// Nothing of it.
            pub const ZERO: Self = Self(0.0);

            /// The larger of two.
            pub fn max(self, other: Self) -> Self {
                Self(self.0.max(other.0))
            }

            /// The smaller of two.
            pub fn min(self, other: Self) -> Self {
                Self(self.0.min(other.0))
            }

            /// The size without its sign.
            pub fn abs(self) -> Self {
                Self(self.0.abs())
            }

            /// True unless the number is infinite or not a number.
            pub fn is_finite(self) -> bool {
                self.0.is_finite()
            }
        }

        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }
        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }
        impl Neg for $name {
            type Output = Self;
            fn neg(self) -> Self {
                Self(-self.0)
            }
        }
        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self(self.0 * factor)
            }
        }
        impl Mul<$name> for f64 {
            type Output = $name;
            fn mul(self, quantity: $name) -> $name {
                $name(self * quantity.0)
            }
        }
        impl Div<f64> for $name {
            type Output = Self;
            fn div(self, divisor: f64) -> Self {
                Self(self.0 / divisor)
            }
        }
        impl Div for $name {
            type Output = f64;
            fn div(self, other: Self) -> f64 {
                self.0 / other.0
            }
        }
        impl AddAssign for $name {
            fn add_assign(&mut self, other: Self) {
                self.0 += other.0;
            }
        }
        impl SubAssign for $name {
            fn sub_assign(&mut self, other: Self) {
                self.0 -= other.0;
            }
        }
        impl std::iter::Sum for $name {
            fn sum<I: Iterator<Item = Self>>(items: I) -> Self {
                items.fold(Self::ZERO, Add::add)
            }
        }
    };
}

quantity!(
    /// A length, stored in millimetres.
    ///
    /// ```
    /// use islandwright::units::Length;
    /// assert_eq!(Length::inches(1.0).mm(), 25.4);
    /// ```
    Length
);
quantity!(
    /// An area, stored in square millimetres.
    Area
);
quantity!(
    /// A volume, stored in cubic millimetres.
    Volume
);
quantity!(
    /// A mass, stored in kilograms.
    Mass
);

quantity!(
    /// A force, stored in newtons.
    Force
);
quantity!(
    /// A stress, strength or pressure, stored in megapascals: newtons a square millimetre.
    Stress
);
quantity!(
    /// A heat input or electric power, stored in watts.
    Power
);

quantity!(
    /// A wind speed, stored in metres a second.
    Speed
);
quantity!(
    /// How long something takes, stored in hours.
    TimeSpan
);

impl Speed {
    /// So many metres a second.
    pub const fn metres_a_second(mps: f64) -> Self {
        Self(mps)
    }

    /// The number of metres a second.
    pub const fn mps(self) -> f64 {
        self.0
    }

    /// The number of kilometres an hour.
    pub fn in_kilometres_an_hour(self) -> f64 {
        self.0 * 3.6
    }
}

impl TimeSpan {
    /// So many hours.
    pub const fn hours(hours: f64) -> Self {
        Self(hours)
    }

    /// So many minutes.
    pub const fn minutes(minutes: f64) -> Self {
        Self(minutes / 60.0)
    }

    /// The number of hours.
    pub const fn in_hours(self) -> f64 {
        self.0
    }

    /// In words: minutes to the nearest five above a quarter of an hour, then hours in tenths, then days: `6 min`,
    /// `1.5 h`, `3 days`.
    ///
    /// ```
    /// use islandwright::units::TimeSpan;
    /// assert_eq!(TimeSpan::minutes(6.2).spell(), "6 min");
    /// assert_eq!(TimeSpan::hours(0.7).spell(), "40 min");
    /// assert_eq!(TimeSpan::hours(1.49).spell(), "1.5 h");
    /// assert_eq!(TimeSpan::hours(73.0).spell(), "3 days");
    /// ```
    pub fn spell(self) -> String {
        let minutes = self.0 * 60.0;
        if minutes.abs() < 15.0 {
            return format!("{:.0} min", minutes.round() + 0.0);
        }
        if minutes.abs() < 57.5 {
            return format!("{:.0} min", (minutes / 5.0).round() * 5.0);
        }
        if self.0.abs() < 47.95 {
            let tenths = format!("{:.1}", self.0);
            return format!("{} h", tenths.trim_end_matches(".0"));
        }
        format!("{:.0} days", self.0 / 24.0)
    }
}

impl Force {
    /// So many newtons.
    pub const fn newtons(n: f64) -> Self {
        Self(n)
    }

    /// The number of newtons.
    pub const fn n(self) -> f64 {
        self.0
    }
}

impl Stress {
    /// So many megapascals.
    pub const fn megapascals(mpa: f64) -> Self {
        Self(mpa)
    }

    /// The number of megapascals.
    pub const fn mpa(self) -> f64 {
        self.0
    }
}

impl Power {
    /// So many watts.
    pub const fn watts(w: f64) -> Self {
        Self(w)
    }

    /// The number of watts.
    pub const fn w(self) -> f64 {
        self.0
    }
}

impl Length {
    /// So many millimetres.
    pub const fn millimetres(mm: f64) -> Self {
        Self(mm)
    }

    /// So many inches of exactly 25.4 mm.
    pub const fn inches(inches: f64) -> Self {
        Self(inches * 25.4)
    }

    /// The number of millimetres.
    pub const fn mm(self) -> f64 {
        self.0
    }

    /// The number of inches.
    pub fn in_inches(self) -> f64 {
        self.0 / 25.4
    }
}

impl Area {
    /// So many square millimetres.
    pub const fn square_millimetres(mm2: f64) -> Self {
        Self(mm2)
    }

    /// The number of square millimetres.
    pub const fn mm2(self) -> f64 {
        self.0
    }

    /// The number of square feet.
    pub fn in_square_feet(self) -> f64 {
        self.0 / (304.8 * 304.8)
    }
}

impl Volume {
    /// So many cubic millimetres.
    pub const fn cubic_millimetres(mm3: f64) -> Self {
        Self(mm3)
    }

    /// The number of cubic millimetres.
    pub const fn mm3(self) -> f64 {
        self.0
    }

    /// The number of cubic feet.
    pub fn in_cubic_feet(self) -> f64 {
        self.0 / (304.8 * 304.8 * 304.8)
    }
}

impl Mass {
    /// So many kilograms.
    pub const fn kilograms(kg: f64) -> Self {
        Self(kg)
    }

    /// The number of kilograms.
    pub const fn kg(self) -> f64 {
        self.0
    }
}

impl Mul for Length {
    type Output = Area;
    fn mul(self, other: Self) -> Area {
        Area(self.0 * other.0)
    }
}

impl Mul<Length> for Area {
    type Output = Volume;
    fn mul(self, other: Length) -> Volume {
        Volume(self.0 * other.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bag_of_concrete_slab_has_the_published_volume() {
        // reference-values.md: 10 ft × 30 in × 2 in = 4.167 ft³.
        let slab = Length::inches(120.0) * Length::inches(30.0) * Length::inches(2.0);
        assert!((slab.in_cubic_feet() - 4.167).abs() < 0.0005);
    }
}
