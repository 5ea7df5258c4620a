//! Reading a price with its currency.

use super::parse_error::ParseError;
use super::{Currency, Money};

const SPELLINGS: &str = "write the currency, such as 11.80 USD, $11.80 or € 9.50";

/// Signs that mean one currency here.
const SIGNS: [(&str, &str); 4] = [("US$", "USD"), ("$", "USD"), ("€", "EUR"), ("£", "GBP")];

/// The largest number of whole units that means anything here.
const LARGEST: i64 = 10_000_000;

/// Reads a price such as `11.80 USD`, `USD 11.80`, `$11.80` (the dollar of the United States), `€ 9.50` or `£ 3`, in cents
/// and exactly.
///
/// ```
/// use islandwright::units::{Currency, Money, parse_money};
/// assert_eq!(parse_money("11.80 USD"), Ok((Money::cents(1180), Currency::USD)));
/// assert!(parse_money("11.80").is_err());
/// ```
///
/// # Errors
/// When the text has no currency, an unknown one, or no number with at most two decimals.
pub fn parse_money(text: &str) -> Result<(Money, Currency), ParseError> {
    let text = text.trim();
    if text.is_empty() {
        return Err(ParseError::new("the price is empty", SPELLINGS));
    }
    let (negative, rest) = without_sign(text);
    let is_number = |c: char| c.is_ascii_digit() || matches!(c, '.' | ',');
    let (Some(start), Some(end)) = (rest.find(is_number), rest.rfind(is_number)) else {
        let problem = format!("'{text}' has no number");
        return Err(ParseError::new(problem, SPELLINGS));
    };
    let (before, number, after) = (&rest[..start], &rest[start..=end], &rest[end + 1..]);
    let (negative, before) = match before.trim().strip_suffix('-') {
        Some(before) => (true, before),
        None => (negative, before),
    };
    let currency = match (before.trim(), after.trim()) {
        ("", "") => {
            let problem = format!("'{text}' has no currency");
            return Err(ParseError::new(problem, SPELLINGS));
        }
        (mark, "") | ("", mark) => currency(mark)?,
        (one, two) => {
            let problem = format!("'{text}' has both '{one}' and '{two}'");
            return Err(ParseError::new(problem, SPELLINGS));
        }
    };
    let cents = cents(number)?;
    let cents = if negative { -cents } else { cents };
    Ok((Money::cents(cents), currency))
}

fn without_sign(text: &str) -> (bool, &str) {
    match text.strip_prefix('-') {
        Some(rest) => (true, rest),
        None => (false, text),
    }
}

fn currency(mark: &str) -> Result<Currency, ParseError> {
    let sign = SIGNS.iter().find(|(sign, _)| *sign == mark);
    let code = sign.map_or(mark, |(_, code)| code);
    Currency::from_code(code).ok_or_else(|| {
        let problem = format!("'{mark}' is not a currency");
        let hint = "write its three capital letters, such as USD or EUR, or $, € or £";
        ParseError::new(problem, hint)
    })
}

fn cents(number: &str) -> Result<i64, ParseError> {
    if number.contains(',') {
        let problem = format!("the price '{number}' has a comma");
        let hint = "write a point before the cents and nothing between thousands, such as 1180.50";
        return Err(ParseError::new(problem, hint));
    }
    let (whole, decimals) = number.split_once('.').unwrap_or((number, ""));
    let digits = |text: &str| text.bytes().all(|b| b.is_ascii_digit());
    if !digits(whole) || !digits(decimals) {
        let problem = format!("'{number}' is not a number");
        return Err(ParseError::new(problem, SPELLINGS));
    }
    if decimals.len() > 2 {
        let problem = format!("'{number}' has parts of a cent");
        let hint = "write two decimals; price a larger unit where one costs less than a cent";
        return Err(ParseError::new(problem, hint));
    }
    let units = if whole.is_empty() { "0" } else { whole };
    let units = units.parse::<i64>().ok().filter(|n| *n <= LARGEST);
    let Some(units) = units else {
        let problem = format!("'{number}' is too large for a price");
        return Err(ParseError::new(problem, "check the number"));
    };
    let parts: i64 = format!("{decimals:0<2}").parse().unwrap_or(0);
    Ok(units * 100 + parts)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn prices_are_read_to_the_cent() {
        // 4.35 × 100 is 434.99999999999994 in floating point.
        for (text, cents, code) in [
            ("11.80 USD", 1180, "USD"),
            ("USD 11.80", 1180, "USD"),
            ("$11.80", 1180, "USD"),
            ("US$ 11.8", 1180, "USD"),
            ("€ 9.50", 950, "EUR"),
            ("9.50 €", 950, "EUR"),
            ("£3", 300, "GBP"),
            ("4.35 CHF", 435, "CHF"),
            ("0.29 USD", 29, "USD"),
            (".07 USD", 7, "USD"),
            ("-2.50 USD", -250, "USD"),
            ("$-2.50", -250, "USD"),
            ("10000000.99 USD", 1_000_000_099, "USD"),
        ] {
            let read = parse_money(text).map(|(m, c)| (m.in_cents(), c.to_string()));
            assert_eq!(read, Ok((cents, code.to_owned())), "{text}");
        }
    }

    #[test]
    fn what_is_no_price_is_refused_with_what_to_write() {
        for (text, words) in [
            ("11.80", "'11.80' has no currency"),
            ("", "the price is empty"),
            ("USD", "'USD' has no number"),
            ("11,80 EUR", "the price '11,80' has a comma"),
            ("1,180.00 USD", "the price '1,180.00' has a comma"),
            ("11.805 USD", "'11.805' has parts of a cent"),
            ("1.2.3 USD", "'1.2.3' is not a number"),
            ("1 2 USD", "'1 2' is not a number"),
            ("11.80 usd", "'usd' is not a currency"),
            ("$11.80 USD", "'$11.80 USD' has both '$' and 'USD'"),
            (
                "99999999999999999999 USD",
                "'99999999999999999999' is too large for a price",
            ),
        ] {
            let error = parse_money(text).unwrap_err();
            assert_eq!(error.problem, words, "{text}");
            assert!(!error.hint.is_empty());
        }
    }
}
