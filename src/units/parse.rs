//! Reading a length as people write it.

use super::Length;
use super::parse_error::ParseError;
use super::parse_number::{take_number, take_sign};

/// The largest size that means anything here: one kilometre.
const LARGEST_MM: f64 = 1.0e6;

const SPELLINGS: &str = "write the unit, such as 24 in, 3' 6-1/2\", 610 mm or 1.2 m";

/// Reads a length such as `24 in`, `24"`, `3' 6-1/2"`, `3 ft 6 1/2 in`, `610 mm`, `61 cm` or `1.2 m`.
///
/// ```
/// use islandwright::units::{Length, parse_length};
/// assert_eq!(parse_length("3' 6-1/2\""), Ok(Length::inches(42.5)));
/// assert!(parse_length("24").is_err());
/// ```
///
/// # Errors
/// When the text has no unit, an unknown one, a malformed number, or a size beyond one kilometre.
pub fn parse_length(text: &str) -> Result<Length, ParseError> {
    let (negative, mut rest) = take_sign(text);
    if rest.is_empty() {
        return Err(ParseError::new("the length is empty", SPELLINGS));
    }
    let mut total = 0.0;
    let mut smallest = f64::INFINITY;
    while !rest.is_empty() {
        let (number, after) = take_number(rest, SPELLINGS)?;
        let (unit, after) = take_unit(after)?;
        let inches_after_feet = smallest == 304.8 && unit == 25.4;
        if smallest.is_finite() && !inches_after_feet {
            return Err(ParseError::new(
                format!("'{text}' mixes its units"),
                "only feet and inches go together, feet first",
            ));
        }
        smallest = unit;
        total += number * unit;
        rest = after.trim_start();
        if unit == 304.8 {
            rest = rest.strip_prefix('-').unwrap_or(rest).trim_start();
        }
    }
    if !total.is_finite() || total > LARGEST_MM {
        return Err(ParseError::new(
            format!("'{text}' is larger than 1 km"),
            "check the unit",
        ));
    }
    Ok(Length::millimetres(if negative { -total } else { total }))
}

/// Takes a unit from the front and gives its size in millimetres.
fn take_unit(text: &str) -> Result<(f64, &str), ParseError> {
    let text = text.trim_start();
    for (mark, size) in [("''", 25.4), ("\"", 25.4), ("”", 25.4), ("″", 25.4)] {
        if let Some(rest) = text.strip_prefix(mark) {
            return Ok((size, rest));
        }
    }
    for mark in ["'", "’", "′"] {
        if let Some(rest) = text.strip_prefix(mark) {
            return Ok((304.8, rest));
        }
    }
    let end = text
        .find(|c: char| !c.is_alphabetic())
        .unwrap_or(text.len());
    let (word, rest) = text.split_at(end);
    let size = match word {
        "" => return Err(ParseError::new("a length has no unit", SPELLINGS)),
        "mm" => 1.0,
        "cm" => 10.0,
        "m" => 1000.0,
        "in" | "inch" | "inches" => 25.4,
        "ft" | "foot" | "feet" => 304.8,
        other => {
            return Err(ParseError::new(
                format!("'{other}' is not a unit of length"),
                "use mm, cm, m, in or ft",
            ));
        }
    };
    Ok((size, rest.strip_prefix('.').unwrap_or(rest)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_spelling_of_the_design_is_read() {
        for (text, mm) in [
            ("24 in", 609.6),
            ("24\"", 609.6),
            ("3' 6-1/2\"", 1079.5),
            ("3 ft 6 1/2 in", 1079.5),
            ("610 mm", 610.0),
            ("1.2 m", 1200.0),
            ("1/16 in", 1.5875),
            ("61cm", 610.0),
            ("-2 in", -50.8),
            ("3'", 914.4),
        ] {
            let read = parse_length(text).unwrap().mm();
            assert!((read - mm).abs() < 1e-9, "{text} read as {read}");
        }
    }

    #[test]
    fn what_is_not_a_length_is_refused() {
        for text in [
            "",
            "24",
            "in",
            "24 ells",
            "1/0 in",
            "3 in 2 ft",
            "1 m 2 in",
            "NaN mm",
            "inf m",
            "1e3 mm",
            "1..2 mm",
            "2000000 mm",
            "- mm",
            "6 mm 5",
            "½ in",
        ] {
            assert!(parse_length(text).is_err(), "{text} was taken");
        }
    }
}
