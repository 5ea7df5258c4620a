//! Colours as a parameter file writes them.

use super::parse_error::ParseError;

const SPELLINGS: &str = "write a word such as sand or slate, or red, green and blue as six figures such as '#d8c9a8', in quotes";

/// Words for the colours that stucco is usually tinted with, and what they mean here: our choice, for the eye only.
const WORDS: [(&str, Colour); 12] = [
    ("white", Colour([0xf2, 0xf0, 0xea])),
    ("cream", Colour::CREAM),
    ("sand", Colour([0xd8, 0xc6, 0xa3])),
    ("ochre", Colour([0xc9, 0x9a, 0x4e])),
    ("terracotta", Colour([0xbd, 0x6b, 0x4a])),
    ("brick", Colour([0x8f, 0x43, 0x35])),
    ("brown", Colour([0x6e, 0x50, 0x3c])),
    ("sage", Colour([0xa3, 0xad, 0x8f])),
    ("blue", Colour([0x6f, 0x8c, 0xa3])),
    ("grey", Colour([0xa6, 0xa5, 0xa0])),
    ("slate", Colour([0x5f, 0x68, 0x6e])),
    ("charcoal", Colour([0x3c, 0x3d, 0x3f])),
];

/// A colour of the sRGB space (IEC 61966-2-1): red, green and blue, each 0 to 255.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Colour(pub [u8; 3]);

impl Colour {
    /// A warm white.
    pub const CREAM: Self = Self([0xef, 0xe6, 0xcf]);

    /// Its parts as shares of light, 0 to 1, by the transfer function of IEC 61966-2-1.
    pub fn linear(self) -> [f32; 3] {
        self.0.map(|part| {
            let part = f64::from(part) / 255.0;
            let light = if part <= 0.040_45 {
                part / 12.92
            } else {
                ((part + 0.055) / 1.055).powf(2.4)
            };
            light as f32
        })
    }

    /// As the web spells it, such as `#d8c9a8`.
    pub fn hex(self) -> String {
        let [red, green, blue] = self.0;
        format!("#{red:02x}{green:02x}{blue:02x}")
    }
}

/// Reads a colour: one of a few plain words, or `#` and six hexadecimal figures, red, green and blue of sRGB.
///
/// ```
/// use islandwright::units::{Colour, parse_colour};
/// assert_eq!(parse_colour("#d8C9a8"), Ok(Colour([0xd8, 0xc9, 0xa8])));
/// assert!(parse_colour("sand").is_ok());
/// assert!(parse_colour("#d8c9").is_err());
/// ```
///
/// # Errors
/// When it is neither.
pub fn parse_colour(text: &str) -> Result<Colour, ParseError> {
    let text = text.trim();
    let word = text.to_ascii_lowercase();
    if let Some((_, colour)) = WORDS.iter().find(|(name, _)| *name == word) {
        return Ok(*colour);
    }
    let problem = || ParseError::new(format!("'{text}' is not a colour"), SPELLINGS);
    let figures = text.strip_prefix('#').ok_or_else(problem)?;
    if figures.len() != 6 || !figures.bytes().all(|b| b.is_ascii_hexdigit()) {
        return Err(problem());
    }
    let all = u32::from_str_radix(figures, 16).map_err(|_| problem())?;
    let [_, red, green, blue] = all.to_be_bytes();
    Ok(Colour([red, green, blue]))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_and_words_are_read() {
        assert_eq!(parse_colour(" #0a10Ff "), Ok(Colour([10, 16, 255])));
        assert_eq!(parse_colour("Sand"), parse_colour("sand"));
        assert_eq!(parse_colour("sand").unwrap().hex(), "#d8c6a3");
    }

    #[test]
    fn what_is_no_colour_is_said() {
        for text in [
            "",
            "#",
            "#fff",
            "#12345g",
            "#1234567",
            "fuchsia-ish",
            "12 in",
            "#€00",
        ] {
            let error = parse_colour(text).unwrap_err();
            assert_eq!(error.problem, format!("'{text}' is not a colour"));
        }
    }

    #[test]
    fn light_goes_by_the_standard() {
        // IEC 61966-2-1: 0 and 255 are 0 and 1; a middle grey of 188 gives about half the light (0.5029).
        assert_eq!(Colour([0, 255, 0]).linear(), [0.0, 1.0, 0.0]);
        assert!((Colour([188, 0, 0]).linear()[0] - 0.5029).abs() < 1e-4);
        // On the straight part: 10 / 255 / 12.92.
        assert!((Colour([10, 0, 0]).linear()[0] - 0.003_035).abs() < 1e-6);
    }
}
