//! What a bare number measures: how it is read and spelt.

use super::parse_amount::parse_mass;
use super::{
    Length, Notation, POUND_A_FOOT, ParseError, Temperature, TimeSpan, parse_area, parse_count,
    parse_evaporation, parse_force, parse_length, parse_power, parse_share, parse_slope,
    parse_stress, parse_temperature, parse_time_span,
};

/// What a number stands for. Each has one base unit, in which the number is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Unit {
    /// Millimetres.
    Length,
    /// Square millimetres.
    Area,
    /// Kilograms.
    Mass,
    /// Newtons.
    Force,
    /// Megapascals; spelt in psi or `MPa`.
    Stress,
    /// Megapascals; spelt in psf or kPa.
    AreaLoad,
    /// Megapascals; spelt in inches of water column or millibar.
    GasPressure,
    /// Newton millimetres; spelt in foot-pounds or newton metres.
    Moment,
    /// Watts; spelt in Btu an hour or kilowatts.
    Heat,
    /// A part of one; spelt in percent.
    Share,
    /// A part of one; spelt as so much per foot or per metre.
    Slope,
    /// A plain number.
    Count,
    /// Degrees Celsius; spelt in whole degrees.
    Temperature,
    /// Kilograms a square metre and hour: what evaporates.
    Evaporation,
    /// Hours; spelt in minutes, hours or days.
    Time,
}

impl Unit {
    /// Reads a number of this unit, in its base unit.
    ///
    /// # Errors
    /// When the text is not an amount of this unit.
    pub fn read(self, text: &str) -> Result<f64, ParseError> {
        match self {
            Self::Length => parse_length(text).map(Length::mm),
            Self::Area => parse_area(text).map(super::Area::mm2),
            Self::Mass => parse_mass(text).map(super::Mass::kg),
            Self::Force => parse_force(text).map(super::Force::n),
            Self::Stress | Self::AreaLoad | Self::GasPressure => {
                parse_stress(text).map(super::Stress::mpa)
            }
            Self::Moment => Err(ParseError::new(
                "a moment is not written in a file",
                "write the force or the length instead",
            )),
            Self::Heat => parse_power(text).map(super::Power::w),
            Self::Share => parse_share(text),
            Self::Slope => parse_slope(text),
            Self::Count => parse_count(text),
            Self::Temperature => parse_temperature(text).map(Temperature::in_celsius),
            Self::Evaporation => parse_evaporation(text),
            Self::Time => parse_time_span(text).map(TimeSpan::in_hours),
        }
    }

    /// True for what can be less than nothing.
    pub fn goes_below_nothing(self) -> bool {
        self == Self::Temperature
    }

    /// Spells a number of this unit for people: three figures, thousands parted by commas.
    ///
    /// ```
    /// use islandwright::units::{Notation, Unit};
    /// assert_eq!(Unit::Force.spell(889.6444, Notation::Imperial), "200 lb");
    /// assert_eq!(Unit::AreaLoad.spell(0.09576, Notation::Metric), "95.8 kPa");
    /// ```
    pub fn spell(self, value: f64, notation: Notation) -> String {
        if self == Self::Length {
            return notation.spell_with_unit(Length::millimetres(value));
        }
        if self == Self::Count {
            return figures(value);
        }
        if self == Self::Share {
            return format!("{} %", figures(value * 100.0));
        }
        if self == Self::Temperature {
            return Temperature::celsius(value).spell(notation);
        }
        if self == Self::Time {
            return TimeSpan::hours(value).spell();
        }
        let (size, word) = self.shown(notation);
        format!("{} {word}", figures(value / size))
    }

    /// The unit people read it in: its size in base units, and its sign.
    fn shown(self, notation: Notation) -> (f64, &'static str) {
        let imperial = notation == Notation::Imperial;
        match self {
            Self::Area if imperial => (645.16, "sq in"),
            Self::Area => (100.0, "cm²"),
            Self::Mass if imperial => (0.453_592_37, "lb"),
            Self::Mass => (1.0, "kg"),
            Self::Force if imperial => (4.448_221_615_260_5, "lb"),
            Self::Force => (1000.0, "kN"),
            Self::Stress if imperial => (6.894_757_293_168e-3, "psi"),
            Self::Stress => (1.0, "MPa"),
            Self::AreaLoad if imperial => (4.788_025_898e-5, "psf"),
            Self::AreaLoad => (1.0e-3, "kPa"),
            Self::GasPressure if imperial => (249.082e-6, "in w.c."),
            Self::GasPressure => (1.0e-4, "mbar"),
            Self::Moment if imperial => (1_355.817_948_331_4, "ft·lb"),
            Self::Moment => (1000.0, "N·m"),
            Self::Heat if imperial => (0.293_071_07, "Btu/h"),
            Self::Heat => (1000.0, "kW"),
            Self::Slope if imperial => (1.0 / 12.0, "in per ft"),
            Self::Slope => (0.001, "mm per m"),
            Self::Evaporation if imperial => (POUND_A_FOOT, "lb/sq ft/h"),
            Self::Evaporation => (1.0, "kg/m²/h"),
            Self::Length | Self::Count | Self::Share | Self::Temperature | Self::Time => (1.0, ""),
        }
    }
}

/// Three significant figures, all the figures of a larger whole part, commas between thousands.
fn figures(value: f64) -> String {
    if !value.is_finite() {
        return value.to_string();
    }
    let decimals = match value.abs() {
        v if v >= 99.95 => 0,
        v if v >= 9.995 => 1,
        v if v >= 0.9995 || v == 0.0 => 2,
        v if v >= 0.09995 => 3,
        _ => 4,
    };
    let text = format!("{value:.decimals$}");
    let (whole, part) = text.split_once('.').unwrap_or((&text, ""));
    let (sign, whole) = whole.strip_prefix('-').map_or(("", whole), |w| ("-", w));
    let mut grouped = String::new();
    for (i, c) in whole.chars().enumerate() {
        if i > 0 && (whole.len() - i) % 3 == 0 {
            grouped.push(',');
        }
        grouped.push(c);
    }
    let part = part.trim_end_matches('0');
    let zero = grouped.bytes().all(|b| b == b'0' || b == b',') && part.is_empty();
    let sign = if zero { "" } else { sign };
    if part.is_empty() {
        format!("{sign}{grouped}")
    } else {
        format!("{sign}{grouped}.{part}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_spelt_as_people_write_them() {
        for (value, text) in [
            (0.0, "0"),
            (-0.000_01, "0"),
            (0.0521, "0.0521"),
            (0.5, "0.5"),
            (1.0, "1"),
            (2.345, "2.35"),
            (47.44, "47.4"),
            (474.3, "474"),
            (12_345.6, "12,346"),
            (1_234_567.0, "1,234,567"),
            (-1500.0, "-1,500"),
        ] {
            assert_eq!(figures(value), text, "{value}");
        }
    }

    #[test]
    fn each_unit_reads_what_it_spells() {
        let units = [
            (Unit::Area, 6451.6),
            (Unit::Mass, 45.359_237),
            (Unit::Force, 444.822_161_526),
            (Unit::Stress, 6.894_757_293),
            (Unit::AreaLoad, 0.047_880_258_98),
            (Unit::GasPressure, 249.082e-6),
            (Unit::Heat, 2930.7107),
            (Unit::Share, 0.25),
            (Unit::Slope, 1.0 / 96.0),
            (Unit::Count, 4.0),
            (Unit::Temperature, 35.0),
            (Unit::Evaporation, 0.5),
            (Unit::Time, 1.5),
            (Unit::Length, 254.0),
        ];
        for (unit, value) in units {
            for notation in [Notation::Imperial, Notation::Metric] {
                let text = unit.spell(value, notation);
                let back = unit.read(&text).unwrap();
                assert!((back / value - 1.0).abs() < 5e-3, "{text}");
            }
        }
    }
}
