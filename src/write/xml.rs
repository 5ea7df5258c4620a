//! What text may be within XML.

use std::borrow::Cow;

/// A text without the characters that XML cannot hold; a tab becomes a space.
pub(super) fn clean(text: &str) -> String {
    text.chars()
        .map(|c| if c == '\t' { ' ' } else { c })
        .filter(|&c| {
            c >= ' ' && !('\u{7f}'..='\u{9f}').contains(&c) && !matches!(c, '\u{fffe}' | '\u{ffff}')
        })
        .collect()
}

/// A text as it stands between tags or between double quotes.
pub(super) fn escaped(text: &str) -> Cow<'_, str> {
    let special = |c: char| matches!(c, '&' | '<' | '>' | '"') || !(' '..'\u{7f}').contains(&c);
    if !text.contains(special) {
        return Cow::Borrowed(text);
    }
    let mut out = String::with_capacity(text.len() + 16);
    for c in clean(text).chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            c => out.push(c),
        }
    }
    Cow::Owned(out)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_would_end_a_text_is_spelt_out_and_what_xml_cannot_hold_is_left_out() {
        assert_eq!(escaped("C-S07"), "C-S07");
        assert_eq!(
            escaped("a<b & \"c\"\u{1}\t×\u{85}\u{ffff}"),
            "a&lt;b &amp; &quot;c&quot; ×"
        );
    }
}
