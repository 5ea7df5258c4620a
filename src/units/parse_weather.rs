//! Reading temperatures, wind, sunshine and times as people write them.

use super::parse_amount::{Kind, POUND};
use super::parse_error::ParseError;
use super::parse_number::{take_number, take_sign};
use super::{Speed, Temperature, TimeSpan};

/// Kilometres an hour in metres a second.
const KPH: f64 = 1.0 / 3.6;
/// Miles an hour in metres a second: 1,609.344 m, exact by definition.
const MPH: f64 = 1609.344 / 3600.0;
/// Knots in metres a second: 1,852 m an hour, exact by definition.
const KNOT: f64 = 1852.0 / 3600.0;

const SPEED: Kind = Kind {
    name: "speed",
    mark: "unit",
    units: &[
        (&["mph", "mi/h", "miles an hour"], MPH),
        (&["km/h", "kmh", "kph"], KPH),
        (&["m/s"], 1.0),
        (&["kn", "kt", "knots"], KNOT),
    ],
    spellings: "write the unit, such as 8 mph, 12 km/h or 3.5 m/s",
    largest: 150.0,
};

const TIME: Kind = Kind {
    name: "time",
    mark: "unit",
    units: &[
        (&["min", "minute", "minutes"], 1.0 / 60.0),
        (&["h", "hr", "hrs", "hour", "hours"], 1.0),
        (&["d", "day", "days"], 24.0),
        (&["week", "weeks"], 168.0),
    ],
    spellings: "write the unit, such as 30 min, 4 h, 1-1/2 h or 7 d",
    largest: 24.0 * 3660.0,
};

const SUN: Kind = Kind {
    name: "sunshine",
    mark: "unit",
    units: &[(&["W/m2", "W/m²"], 1.0), (&["kW/m2", "kW/m²"], 1000.0)],
    spellings: "write the unit, such as 650 W/m2",
    largest: 1500.0,
};

const SPELLINGS: &str = "write it in degrees, such as 72 °F, 72 F or 22 °C";

/// Reads a temperature such as `72 °F`, `72 F`, `22 °C`, `-3 C` or `22 deg C`.
///
/// # Errors
/// When the text has no unit, an unknown one, a malformed number, or lies below absolute zero or above 2,000 °C.
pub fn parse_temperature(text: &str) -> Result<Temperature, ParseError> {
    let (negative, rest) = take_sign(text);
    if rest.is_empty() {
        return Err(ParseError::new("the temperature is empty", SPELLINGS));
    }
    let (number, unit) = take_number(rest, SPELLINGS)?;
    let number = if negative { -number } else { number };
    let unit = unit.trim();
    let letter = unit.strip_prefix('°').or_else(|| unit.strip_prefix("deg"));
    let temperature = match letter.unwrap_or(unit).trim() {
        "F" => Temperature::fahrenheit(number),
        "C" => Temperature::celsius(number),
        "" => {
            let problem = format!("'{}' does not say Fahrenheit or Celsius", text.trim());
            return Err(ParseError::new(problem, SPELLINGS));
        }
        other => {
            let problem = format!("'{}' is not a unit of temperature", other.escape_debug());
            return Err(ParseError::new(problem, SPELLINGS));
        }
    };
    if (0.0..=2273.15).contains(&temperature.in_kelvin()) {
        Ok(temperature)
    } else {
        let problem = format!("'{}' is no temperature on earth", text.trim());
        Err(ParseError::new(problem, "check the number and its unit"))
    }
}

/// Reads a wind speed such as `8 mph`, `12 km/h`, `3.5 m/s` or `6 kn`.
///
/// # Errors
/// When the text has no unit, an unknown one, a malformed number, or a size beyond 150 m/s.
pub fn parse_speed(text: &str) -> Result<Speed, ParseError> {
    SPEED.read(text).map(Speed::metres_a_second)
}

/// Reads how long something takes, such as `30 min`, `4 h`, `1-1/2 h`, `7 d` or `2 weeks`.
///
/// # Errors
/// When the text has no unit, an unknown one, a malformed number, or a size beyond ten years.
pub fn parse_time_span(text: &str) -> Result<TimeSpan, ParseError> {
    TIME.read(text).map(TimeSpan::hours)
}

/// A pound of water a square foot, in kilograms a square metre.
pub const POUND_A_FOOT: f64 = POUND / (0.3048 * 0.3048);

const EVAPORATION: Kind = Kind {
    name: "evaporation",
    mark: "unit",
    units: &[
        (&["kg/m2/h", "kg/m²/h"], 1.0),
        (&["lb/sq ft/h", "lb/ft2/h", "lb/ft²/h"], POUND_A_FOOT),
    ],
    spellings: "write the unit, such as 1.0 kg/m2/h or 0.2 lb/sq ft/h",
    largest: 1000.0,
};

/// Reads how much water evaporates, such as `1.0 kg/m2/h` or `0.2 lb/sq ft/h`, in kilograms a square metre and hour.
///
/// # Errors
/// When the text has no unit, an unknown one, a malformed number, or a size beyond 1,000 kg/m²/h.
pub fn parse_evaporation(text: &str) -> Result<f64, ParseError> {
    EVAPORATION.read(text)
}

/// Reads the sun's power on level ground such as `650 W/m2`, in watts a square metre.
///
/// # Errors
/// When the text has no unit, an unknown one, a malformed number, or a size beyond 1,500 W/m².
pub fn parse_irradiance(text: &str) -> Result<f64, ParseError> {
    SUN.read(text)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn temperatures_are_read_in_both_scales() {
        // -40 is the same in both; water boils at 212 °F and 100 °C.
        let c = |text| parse_temperature(text).unwrap().in_celsius();
        assert!((c("-40 °F") + 40.0).abs() < 1e-9);
        assert!((c("212F") - 100.0).abs() < 1e-9);
        assert!((c("22 deg C") - 22.0).abs() < 1e-9);
        for bad in ["", "72", "72 K", "-500 C", "warm", "1e9 F"] {
            assert!(parse_temperature(bad).is_err(), "{bad}");
        }
    }

    #[test]
    fn wind_times_and_sun_have_their_sizes() {
        // 60 mph are 88 ft a second, 26.8224 m/s.
        assert!((parse_speed("60 mph").unwrap().mps() - 26.8224).abs() < 1e-9);
        assert!((parse_speed("36 km/h").unwrap().mps() - 10.0).abs() < 1e-9);
        assert!((parse_time_span("1-1/2 h").unwrap().in_hours() - 1.5).abs() < 1e-12);
        assert!((parse_time_span("2 weeks").unwrap().in_hours() - 336.0).abs() < 1e-12);
        assert!((parse_irradiance("0.5 kW/m2").unwrap() - 500.0).abs() < 1e-9);
        assert!(parse_speed("5").is_err() && parse_time_span("5 m").is_err());
    }
}
