//! How numbers and texts are spelt in a USD layer.

use std::fmt::Write;

/// Figures after the point: a hundredth of a millimetre where lengths are metres, less than the eye or a phone can tell.
const PLACES: f64 = 1e5;

/// A number without trailing zeros.
pub(super) fn number(out: &mut String, value: f32) {
    let rounded = (f64::from(value) * PLACES).round() / PLACES;
    // Nothing has no sign.
    let _ = write!(out, "{}", rounded + 0.0);
}

/// `(x, y, z)`.
pub(super) fn triple(out: &mut String, values: [f32; 3]) {
    out.push('(');
    for (i, value) in values.into_iter().enumerate() {
        out.push_str(if i == 0 { "" } else { ", " });
        number(out, value);
    }
    out.push(')');
}

/// `[a, b, c]` of anything.
pub(super) fn list<T: Copy>(out: &mut String, values: &[T], spell: impl Fn(&mut String, T)) {
    out.push('[');
    for (i, value) in values.iter().enumerate() {
        out.push_str(if i == 0 { "" } else { ", " });
        spell(out, *value);
    }
    out.push(']');
}

/// A text in quotes.
pub(super) fn quoted(text: &str) -> String {
    let mut out = String::from("\"");
    for c in text.chars() {
        match c {
            '"' | '\\' => out.extend(['\\', c]),
            c if c.is_control() => out.push(' '),
            c => out.push(c),
        }
    }
    out.push('"');
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_short_and_nothing_has_no_sign() {
        let spelt = |v: f32| {
            let mut out = String::new();
            number(&mut out, v);
            out
        };
        let found = [0.1, -0.0, -0.000_001, 1.0, -2.5, 0.707_106_77, 12.0].map(spelt);
        assert_eq!(found, ["0.1", "0", "0", "1", "-2.5", "0.70711", "12"]);
        let mut out = String::new();
        list(&mut out, &[[0.5, 1.0, -1.0]], triple);
        assert_eq!(out, "[(0.5, 1, -1)]");
    }

    #[test]
    fn quotes_within_a_text_are_kept_from_ending_it() {
        assert_eq!(quoted("a \"b\" \\ c\nd"), "\"a \\\"b\\\" \\\\ c d\"");
    }
}
