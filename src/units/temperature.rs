//! Temperature.

use super::Notation;

/// A temperature, stored in degrees Celsius.
///
/// It has no sum: 20 °C and 20 °C are not 40 °C. Differences are plain numbers of kelvin.
///
/// ```
/// use islandwright::units::Temperature;
/// assert!((Temperature::fahrenheit(212.0).in_celsius() - 100.0).abs() < 1e-12);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Temperature(f64);

/// Zero Celsius in kelvin, exact by definition.
const ICE: f64 = 273.15;

impl Temperature {
    /// So many degrees Celsius.
    pub const fn celsius(degrees: f64) -> Self {
        Self(degrees)
    }

    /// So many degrees Fahrenheit.
    pub const fn fahrenheit(degrees: f64) -> Self {
        Self((degrees - 32.0) / 1.8)
    }

    /// The number of degrees Celsius.
    pub const fn in_celsius(self) -> f64 {
        self.0
    }

    /// The number of degrees Fahrenheit.
    pub const fn in_fahrenheit(self) -> f64 {
        self.0 * 1.8 + 32.0
    }

    /// The number of kelvin.
    pub const fn in_kelvin(self) -> f64 {
        self.0 + ICE
    }

    /// In words, rounded to whole degrees: `86 °F` or `30 °C`.
    pub fn spell(self, notation: Notation) -> String {
        let (degrees, sign) = match notation {
            Notation::Imperial => (self.in_fahrenheit(), 'F'),
            Notation::Metric => (self.0, 'C'),
        };
        // No minus before a zero.
        let whole = degrees.round() + 0.0;
        format!("{whole} °{sign}")
    }
}
