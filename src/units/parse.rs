//! Reading a length as people write it.

use super::Length;

/// Why a text is not a length; `hint` says what to write instead.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LengthError {
    /// What is wrong, in a short clause.
    pub problem: String,
    /// What would put it right.
    pub hint: String,
}

impl std::fmt::Display for LengthError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}; {}", self.problem, self.hint)
    }
}

impl std::error::Error for LengthError {}

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
pub fn parse_length(text: &str) -> Result<Length, LengthError> {
    let mut rest = text.trim();
    let negative = rest.starts_with('-');
    rest = rest.strip_prefix(['-', '+']).unwrap_or(rest).trim_start();
    if rest.is_empty() {
        return Err(error("the length is empty", SPELLINGS));
    }
    let mut total = 0.0;
    let mut smallest = f64::INFINITY;
    while !rest.is_empty() {
        let (number, after) = take_number(rest)?;
        let (unit, after) = take_unit(after)?;
        let inches_after_feet = smallest == 304.8 && unit == 25.4;
        if smallest.is_finite() && !inches_after_feet {
            return Err(error(
                &format!("'{text}' mixes its units"),
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
        return Err(error(
            &format!("'{text}' is larger than 1 km"),
            "check the unit",
        ));
    }
    Ok(Length::millimetres(if negative { -total } else { total }))
}

fn error(problem: &str, hint: &str) -> LengthError {
    LengthError {
        problem: problem.to_owned(),
        hint: hint.to_owned(),
    }
}

/// Takes `6`, `6.5`, `1/2`, `6 1/2` or `6-1/2` from the front.
fn take_number(text: &str) -> Result<(f64, &str), LengthError> {
    let (whole, rest) = take_decimal(text)?;
    if let Some(after_slash) = rest.strip_prefix('/') {
        let (denominator, rest) = take_decimal(after_slash)?;
        return Ok((divide(whole, denominator)?, rest));
    }
    let tail = rest.trim_start_matches([' ', '-']);
    if tail.len() < rest.len()
        && let Ok((numerator, after)) = take_decimal(tail)
        && let Some(after) = after.strip_prefix('/')
    {
        let (denominator, after) = take_decimal(after)?;
        return Ok((whole + divide(numerator, denominator)?, after));
    }
    Ok((whole, rest))
}

fn divide(numerator: f64, denominator: f64) -> Result<f64, LengthError> {
    if denominator == 0.0 {
        return Err(error(
            "a fraction has a zero below its line",
            "write it like 1/2",
        ));
    }
    Ok(numerator / denominator)
}

fn take_decimal(text: &str) -> Result<(f64, &str), LengthError> {
    let end = text
        .find(|c: char| !(c.is_ascii_digit() || c == '.'))
        .unwrap_or(text.len());
    let (digits, rest) = text.split_at(end);
    match digits.parse::<f64>() {
        Ok(number) => Ok((number, rest)),
        Err(_) => Err(error(&format!("'{text}' is not a number"), SPELLINGS)),
    }
}

/// Takes a unit from the front and gives its size in millimetres.
fn take_unit(text: &str) -> Result<(f64, &str), LengthError> {
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
        "" => return Err(error("a length has no unit", SPELLINGS)),
        "mm" => 1.0,
        "cm" => 10.0,
        "m" => 1000.0,
        "in" | "inch" | "inches" => 25.4,
        "ft" | "foot" | "feet" => 304.8,
        other => {
            return Err(error(
                &format!("'{other}' is not a unit of length"),
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
