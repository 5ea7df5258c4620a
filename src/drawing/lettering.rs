//! The lettering of all drawings: one embedded font, and how wide a text is in it.
//!
//! Sizes are given as the height of a capital, as ISO 3098 does; the font is scaled so that a capital is exactly that
//! high. Letters are set one after the other by their advance, without kerning, so that every format can agree on the
//! width of a text.

use std::sync::LazyLock;
use ttf_parser::Face;

/// The font's family name.
pub const FAMILY: &str = "DejaVu Sans Condensed";

/// The usual name of its file, for formats that name the font instead of holding it.
pub const FONT_FILE: &str = "DejaVuSansCondensed.ttf";

/// The whole font file, TrueType; writers embed it or the part they use.
pub fn font_data() -> &'static [u8] {
    dejavu::sans_condensed::regular()
}

/// One letter as the font has it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Letter {
    /// Its number in the font; 0 stands for a letter that the font has not.
    pub glyph: u16,
    /// How far the next one is set, in units of the font's size.
    pub advance: f64,
}

struct Font {
    face: Option<Face<'static>>,
    per_em: f64,
    capital: f64,
    ascent: f64,
    descent: f64,
    common: Vec<Letter>,
}

/// Letters below this code are looked up once.
const COMMON: u32 = 0x180;

static FONT: LazyLock<Font> = LazyLock::new(|| {
    let face = Face::parse(font_data(), 0).ok();
    let read =
        |pick: fn(&Face<'static>) -> f64, otherwise: f64| face.as_ref().map_or(otherwise, pick);
    let per_em = read(|f| f64::from(f.units_per_em()), 2048.0);
    let mut font = Font {
        per_em,
        capital: read(|f| f64::from(f.capital_height().unwrap_or(1493)), 1493.0) / per_em,
        ascent: read(|f| f64::from(f.ascender()), 1901.0) / per_em,
        descent: read(|f| f64::from(f.descender()), -483.0) / -per_em,
        common: Vec::new(),
        face,
    };
    font.common = (0..COMMON)
        .map(|code| font.look_up(char::from_u32(code).unwrap_or(' ')))
        .collect();
    font
});

impl Font {
    fn look_up(&self, letter: char) -> Letter {
        let Some(face) = &self.face else {
            return Letter {
                glyph: 0,
                advance: 0.6,
            };
        };
        let id = face.glyph_index(letter).unwrap_or_default();
        let advance = face
            .glyph_hor_advance(id)
            .map_or(0.6, |a| f64::from(a) / self.per_em);
        Letter {
            glyph: id.0,
            advance,
        }
    }
}

/// A character as the font has it.
pub fn letter(character: char) -> Letter {
    FONT.common
        .get(character as usize)
        .copied()
        .unwrap_or_else(|| FONT.look_up(character))
}

/// The font's size (its em) in millimetres when a capital is `cap_height` millimetres high.
pub fn size(cap_height: f64) -> f64 {
    cap_height / FONT.capital
}

/// How wide one line of text is, millimetres, when a capital is `cap_height` millimetres high.
///
/// ```
/// use islandwright::drawing::lettering::width;
/// assert!(width("Mm", 3.5) > width("Il", 3.5));
/// assert_eq!(width("", 3.5), 0.0);
/// ```
pub fn width(text: &str, cap_height: f64) -> f64 {
    text.chars().map(|c| letter(c).advance).sum::<f64>() * size(cap_height)
}

/// How far the tallest letters reach above the baseline, millimetres.
pub fn ascent(cap_height: f64) -> f64 {
    FONT.ascent * size(cap_height)
}

/// How far the deepest letters reach below the baseline, millimetres.
pub fn descent(cap_height: f64) -> f64 {
    FONT.descent * size(cap_height)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_sign_that_drawings_need_is_in_the_font() {
        let signs =
            "ABCXYZabcxyzäöüßéñøØÅ0123456789 '\"′″°±×–—−≤≥≈→←↑↓½¼¾⅛⅜⅝⅞⅓⅔…·•µ²³/()[]@:;,.#%&+<>⌀€";
        for sign in signs.chars() {
            assert_ne!(letter(sign).glyph, 0, "no {sign}");
        }
        assert_eq!(letter('\u{E123}').glyph, 0, "a private sign is not there");
    }

    #[test]
    fn a_capital_is_exactly_as_high_as_asked() {
        let face = Face::parse(font_data(), 0).unwrap();
        for capital in ['H', 'E', 'I', 'T'] {
            let box_ = face
                .glyph_bounding_box(face.glyph_index(capital).unwrap())
                .unwrap();
            let height = f64::from(box_.y_max) / f64::from(face.units_per_em()) * size(3.5);
            assert!((height - 3.5).abs() < 1e-3, "{capital} is {height} high");
        }
    }

    #[test]
    fn the_family_is_the_one_in_the_file() {
        let face = Face::parse(font_data(), 0).unwrap();
        let named = |id| {
            face.names()
                .into_iter()
                .any(|n| n.name_id == id && n.to_string().as_deref() == Some(FAMILY))
        };
        assert!(named(ttf_parser::name_id::FAMILY) || named(ttf_parser::name_id::FULL_NAME));
    }

    #[test]
    fn width_is_the_sum_of_the_advances_and_scales() {
        assert!((width("H1", 7.0) - 2.0 * (width("H", 3.5) + width("1", 3.5))).abs() < 1e-9);
        // Figures are all of one width, so that columns of them stand straight.
        assert!(
            "023456789"
                .chars()
                .all(|c| letter(c).advance == letter('1').advance)
        );
        assert!(ascent(3.5) > 3.5 && descent(3.5) > 0.0);
    }
}
