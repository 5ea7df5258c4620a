//! The limits that an hour is held against.

use crate::design::Design;
use crate::units::{Temperature, TimeSpan, Unit};

/// The usual values, in base units, with the names by which a file sets them otherwise.
pub mod usual {
    /// Evaporation at which plastic shrinkage cracks a plain mix, kg/m²/h (ACI 305R).
    pub const EVAPORATION: (&str, f64) = ("evaporation", 1.0);
    /// The same of a mix with silica fume: about half (ACI 305R).
    pub const EVAPORATION_SILICA_FUME: (&str, f64) = ("evaporation-silica-fume", 0.5);
    /// The warmest that concrete is placed, °C: 95 °F (ACI 301-20).
    pub const HOTTEST: (&str, f64) = ("concrete-hottest", 35.0);
    /// The coldest that a section under 12 in is placed and kept, °C: 55 °F (ACI 306R, Table 3.1).
    pub const COLDEST: (&str, f64) = ("concrete-coldest", (55.0 - 32.0) / 1.8);
    /// Air below which it is cold weather, °C: 40 °F (ACI 306R, from memory).
    pub const COLD_AIR: (&str, f64) = ("cold-air", (40.0 - 32.0) / 1.8);
    /// So long new concrete must not freeze, hours: two days (ACI 306R, from memory).
    pub const NO_FROST: (&str, f64) = ("hours-without-frost", 48.0);
    /// How long a mix can be worked at 70 °F, hours: 90 minutes (ASTM C94, long its rule, from memory).
    pub const WORKING: (&str, f64) = ("working-time", 1.5);
    /// Initial set at 70 °F, hours (common practice).
    pub const INITIAL_SET: (&str, f64) = ("initial-set", 4.0);
    /// The warmest air in which coats are laid, °C: 100 °F (common practice).
    pub const COAT_HOTTEST: (&str, f64) = ("coats-hottest", (100.0 - 32.0) / 1.8);
    /// The coldest, °C: 40 °F (ASTM C926, from memory).
    pub const COAT_COLDEST: (&str, f64) = ("coats-coldest", (40.0 - 32.0) / 1.8);
}

/// The limits of one design: the usual ones, or the file's own.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// The most that may evaporate, kg/m²/h.
    pub evaporation: f64,
    /// The warmest concrete.
    pub hottest: Temperature,
    /// The coldest.
    pub coldest: Temperature,
    /// Air below which it is cold weather.
    pub cold_air: Temperature,
    /// How long it must not freeze.
    pub no_frost: TimeSpan,
    /// How long a mix can be worked at 70 °F.
    pub working: TimeSpan,
    /// Initial set at 70 °F.
    pub initial_set: TimeSpan,
    /// The warmest air for coats.
    pub coat_hottest: Temperature,
    /// The coldest.
    pub coat_coldest: Temperature,
}

impl Limits {
    /// The limits of a design.
    pub fn of(design: &Design) -> Self {
        let value = |limit, unit| own(design, limit, unit);
        let evaporation = if design.pour.silica_fume {
            usual::EVAPORATION_SILICA_FUME
        } else {
            usual::EVAPORATION
        };
        let warm = |limit| Temperature::celsius(value(limit, Unit::Temperature));
        let long = |limit| TimeSpan::hours(value(limit, Unit::Time));
        Self {
            evaporation: value(evaporation, Unit::Evaporation),
            hottest: warm(usual::HOTTEST),
            coldest: warm(usual::COLDEST),
            cold_air: warm(usual::COLD_AIR),
            no_frost: long(usual::NO_FROST),
            working: long(usual::WORKING),
            initial_set: long(usual::INITIAL_SET),
            coat_hottest: warm(usual::COAT_HOTTEST),
            coat_coldest: warm(usual::COAT_COLDEST),
        }
    }
}

/// The file's own value of a limit, or the usual one; the rules say what is wrong with one that cannot be read.
fn own(design: &Design, (name, usual): (&str, f64), unit: Unit) -> f64 {
    let own = design.limits.iter().rfind(|o| o.name.value == name);
    let read = own.and_then(|o| unit.read(&o.value.value).ok());
    let read = read.filter(|v| *v >= 0.0 || unit.goes_below_nothing());
    read.unwrap_or(usual)
}
