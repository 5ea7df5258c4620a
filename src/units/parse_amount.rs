//! Reading areas, volumes, masses and shares as people write them.

use super::parse_error::ParseError;
use super::parse_number::{take_number, take_sign};
use super::{Area, Mass, Volume};

const FOOT: f64 = 304.8;
const INCH: f64 = 25.4;
/// The US gallon: 231 cubic inches.
const GALLON: f64 = 231.0 * INCH * INCH * INCH;
/// The avoirdupois pound in kilograms, exact by definition.
pub(super) const POUND: f64 = 0.453_592_37;

/// A kind of quantity: its units with their sizes, and what to write.
pub(super) struct Kind {
    pub(super) name: &'static str,
    /// What follows the number.
    pub(super) mark: &'static str,
    pub(super) units: &'static [(&'static [&'static str], f64)],
    pub(super) spellings: &'static str,
    /// Beyond this it is a slip of the pen.
    pub(super) largest: f64,
}

const AREA: Kind = Kind {
    name: "area",
    mark: "unit",
    units: &[
        (
            &["sq ft", "ft2", "ft²", "square foot", "square feet"],
            FOOT * FOOT,
        ),
        (
            &["sq in", "in2", "in²", "square inch", "square inches"],
            INCH * INCH,
        ),
        (&["cm2", "cm²", "sq cm"], 100.0),
        (
            &["m2", "m²", "sq m", "square metres", "square meters"],
            1.0e6,
        ),
    ],
    spellings: "write the unit, such as 20 sq ft, 20 ft2 or 1.9 m2",
    largest: 1.0e12,
};

const VOLUME: Kind = Kind {
    name: "volume",
    mark: "unit",
    units: &[
        (
            &["cu ft", "ft3", "ft³", "cubic foot", "cubic feet"],
            FOOT * FOOT * FOOT,
        ),
        (
            &["cu in", "in3", "in³", "cubic inch", "cubic inches"],
            INCH * INCH * INCH,
        ),
        (
            &["cu yd", "yd3", "yd³", "cubic yards"],
            27.0 * FOOT * FOOT * FOOT,
        ),
        (&["L", "l", "litre", "litres", "liter", "liters"], 1.0e6),
        (&["ml", "mL"], 1.0e3),
        (&["qt", "quart", "quarts"], GALLON / 4.0),
        (&["gal", "gallon", "gallons"], GALLON),
        (&["m3", "m³", "cu m", "cubic metres", "cubic meters"], 1.0e9),
    ],
    spellings: "write the unit, such as 0.60 cu ft, 17 L, 3 qt, 1 gal or 0.02 m3",
    largest: 1.0e12,
};

const MASS: Kind = Kind {
    name: "weight",
    mark: "unit",
    units: &[
        (&["lb", "lbs", "pound", "pounds"], POUND),
        (&["oz", "ounce", "ounces"], POUND / 16.0),
        (&["kg"], 1.0),
        (&["g"], 1.0e-3),
    ],
    spellings: "write the unit, such as 80 lb, 9 oz or 36 kg",
    largest: 1.0e6,
};

const SHARE: Kind = Kind {
    name: "share",
    mark: "percent sign",
    units: &[(&["%", "percent", "per cent"], 0.01)],
    spellings: "write it in percent, such as 10 % or 8.25 %",
    largest: 10.0,
};

/// Reads an area such as `20 sq ft`, `20 ft2` or `1.9 m2`.
///
/// ```
/// use islandwright::units::parse_area;
/// assert!((parse_area("20 sq ft").unwrap().in_square_feet() - 20.0).abs() < 1e-12);
/// ```
///
/// # Errors
/// When the text has no unit, an unknown one, a malformed number, or a size beyond a square kilometre.
pub fn parse_area(text: &str) -> Result<Area, ParseError> {
    AREA.read(text).map(Area::square_millimetres)
}

/// Reads a volume such as `0.60 cu ft`, `0.6 ft3`, `17 L`, `3 qt`, `1 gal` (both of the United States) or `0.02 m3`.
///
/// # Errors
/// When the text has no unit, an unknown one, a malformed number, or a size beyond 1,000 m³.
pub fn parse_volume(text: &str) -> Result<Volume, ParseError> {
    VOLUME.read(text).map(Volume::cubic_millimetres)
}

/// Reads a mass such as `80 lb`, `36 kg` or `9 oz`.
///
/// # Errors
/// When the text has no unit, an unknown one, a malformed number, or a size beyond 1,000 t.
pub fn parse_mass(text: &str) -> Result<Mass, ParseError> {
    MASS.read(text).map(Mass::kilograms)
}

/// Reads a share such as `10 %`: 0.1. A bare number is refused, since `10` and `0.1` would both be guesses.
///
/// # Errors
/// When the text has no percent sign, a malformed number, or is beyond 1,000 %.
pub fn parse_share(text: &str) -> Result<f64, ParseError> {
    SHARE.read(text)
}

impl Kind {
    pub(super) fn read(&self, text: &str) -> Result<f64, ParseError> {
        let (negative, rest) = take_sign(text);
        let name = self.name;
        if rest.is_empty() {
            let problem = format!("the {name} is empty");
            return Err(ParseError::new(problem, self.spellings));
        }
        let (number, unit) = take_number(rest, self.spellings)?;
        let size = number * self.unit(text.trim(), unit)?;
        if !size.is_finite() || size > self.largest {
            let problem = format!("'{}' is too large for a {name}", text.trim());
            return Err(ParseError::new(problem, "check the number and its unit"));
        }
        Ok(if negative { -size } else { size })
    }

    /// The size of a unit; dots and repeated spaces in it do not count.
    fn unit(&self, text: &str, unit: &str) -> Result<f64, ParseError> {
        let plain = unit.replace('.', " ");
        let plain = plain.split_whitespace().collect::<Vec<_>>().join(" ");
        if plain.is_empty() {
            let problem = format!("'{text}' has no {}", self.mark);
            return Err(ParseError::new(problem, self.spellings));
        }
        let known = self.units.iter().find(|(names, _)| {
            let mut names = names.iter();
            names.any(|n| *n == plain)
        });
        known.map(|(_, size)| *size).ok_or_else(|| {
            let problem = format!("'{plain}' is not a unit of {}", self.name);
            ParseError::new(problem, self.spellings)
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(found: f64, paper: f64) -> bool {
        (found / paper - 1.0).abs() < 1e-9
    }

    #[test]
    fn units_have_their_legal_sizes() {
        // NIST Handbook 44, appendix C: 1 ft² = 0.092 903 04 m², 1 ft³ = 28.316 846 592 L, 1 gal = 3.785 411 784 L,
        // 1 lb = 0.453 592 37 kg, 1 oz = 28.349 523 125 g.
        for (text, mm2) in [
            ("20 sq ft", 1_858_060.8),
            ("20 ft2", 1_858_060.8),
            ("1.9 m2", 1.9e6),
            ("144 sq. in.", 92_903.04),
        ] {
            assert!(near(parse_area(text).unwrap().mm2(), mm2), "{text}");
        }
        for (text, mm3) in [
            ("0.60 cu ft", 16_990_107.955_2),
            ("0.6 ft3", 16_990_107.955_2),
            ("17 L", 17.0e6),
            ("3 qt", 2_839_058.838),
            ("1 gal", 3_785_411.784),
            ("0.02 m3", 20.0e6),
            ("1-1/2 gal", 5_678_117.676),
        ] {
            assert!(near(parse_volume(text).unwrap().mm3(), mm3), "{text}");
        }
        for (text, kg) in [
            ("80 lb", 36.287_389_6),
            ("36 kg", 36.0),
            ("9 oz", 0.255_145_708_125),
            ("500g", 0.5),
        ] {
            assert!(near(parse_mass(text).unwrap().kg(), kg), "{text}");
        }
        assert!(near(parse_share("8.25 %").unwrap(), 0.0825));
        assert!(near(parse_share("-10%").unwrap(), -0.1));
    }

    #[test]
    fn what_is_no_amount_is_refused_with_what_to_write() {
        for (said, words) in [
            (parse_area("20").err(), "'20' has no unit"),
            (parse_area("20 ft").err(), "'ft' is not a unit of area"),
            (
                parse_volume("0.6 ft2").err(),
                "'ft2' is not a unit of volume",
            ),
            (parse_volume("").err(), "the volume is empty"),
            (
                parse_mass("80 stone").err(),
                "'stone' is not a unit of weight",
            ),
            (
                parse_mass("1/0 lb").err(),
                "a fraction has a zero below its line",
            ),
            (parse_mass("inf kg").err(), "'inf kg' is not a number"),
            (
                parse_share("2000 %").err(),
                "'2000 %' is too large for a share",
            ),
        ] {
            let said = said.unwrap();
            assert_eq!(said.problem, words);
            assert!(!said.hint.is_empty());
        }
        let bare = parse_share("0.1").unwrap_err();
        assert_eq!(bare.problem, "'0.1' has no percent sign");
        assert_eq!(bare.hint, "write it in percent, such as 10 % or 8.25 %");
    }
}
