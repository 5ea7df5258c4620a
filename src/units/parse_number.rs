//! Reading the number of a quantity.

use super::parse_error::ParseError;

/// Takes a sign from the front: whether it is a minus, and the rest.
pub(super) fn take_sign(text: &str) -> (bool, &str) {
    let text = text.trim();
    let rest = text.strip_prefix(['-', '+']).unwrap_or(text).trim_start();
    (text.starts_with('-'), rest)
}

/// Takes `6`, `6.5`, `1/2`, `6 1/2` or `6-1/2` from the front.
pub(super) fn take_number<'t>(text: &'t str, hint: &str) -> Result<(f64, &'t str), ParseError> {
    let (whole, rest) = take_decimal(text, hint)?;
    if let Some(after_slash) = rest.strip_prefix('/') {
        let (denominator, rest) = take_decimal(after_slash, hint)?;
        return Ok((divide(whole, denominator)?, rest));
    }
    let tail = rest.trim_start_matches([' ', '-']);
    if tail.len() < rest.len()
        && let Ok((numerator, after)) = take_decimal(tail, hint)
        && let Some(after) = after.strip_prefix('/')
    {
        let (denominator, after) = take_decimal(after, hint)?;
        return Ok((whole + divide(numerator, denominator)?, after));
    }
    Ok((whole, rest))
}

fn divide(numerator: f64, denominator: f64) -> Result<f64, ParseError> {
    if denominator == 0.0 {
        return Err(ParseError::new(
            "a fraction has a zero below its line",
            "write it like 1/2",
        ));
    }
    Ok(numerator / denominator)
}

fn take_decimal<'t>(text: &'t str, hint: &str) -> Result<(f64, &'t str), ParseError> {
    let end = text
        .find(|c: char| !(c.is_ascii_digit() || c == '.'))
        .unwrap_or(text.len());
    let (digits, rest) = text.split_at(end);
    match digits.parse::<f64>() {
        Ok(number) => Ok((number, rest)),
        Err(_) => Err(ParseError::new(format!("'{text}' is not a number"), hint)),
    }
}
