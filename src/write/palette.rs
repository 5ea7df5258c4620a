//! The colours of layers, the same in every format.
//!
//! Muted, each readable on white and on a grey print; nothing relies on them, since layers differ by width and line type
//! too.

use crate::drawing::{Ink, Layer};

/// Red, green, blue, each 0 to 255.
pub(super) type Rgb = [u8; 3];

const BLACK: Rgb = [0, 0, 0];

/// What a layer is drawn with.
pub(super) fn colour(ink: Ink, layer: Layer) -> Rgb {
    match ink {
        Ink::Black => BLACK,
        Ink::Colour => own(layer),
    }
}

/// The one table of colours.
fn own(layer: Layer) -> Rgb {
    match layer {
        Layer::Border => [0x26, 0x2b, 0x30],
        Layer::Outline => [0x12, 0x16, 0x1a],
        Layer::Detail => [0x3f, 0x4a, 0x54],
        Layer::Hidden => [0x5d, 0x61, 0x66],
        Layer::Centre => [0x7d, 0x46, 0x1e],
        Layer::Cut => [0x96, 0x23, 0x23],
        Layer::Section => [0x2e, 0x1c, 0x14],
        Layer::Hatch => [0x6b, 0x66, 0x55],
        Layer::Site => [0x3d, 0x66, 0x3a],
        Layer::Symbol => [0x74, 0x30, 0x5c],
        Layer::Table => [0x2b, 0x3a, 0x52],
        Layer::Dimension => [0x24, 0x55, 0x70],
        Layer::Note => [0x38, 0x3f, 0x2a],
    }
}

/// A colour as much lightened as a fill is: 0 leaves it, 1 is white.
pub(super) fn tint(colour: Rgb, lightness: f64) -> Rgb {
    let lightness = if lightness.is_nan() {
        0.0
    } else {
        lightness.clamp(0.0, 1.0)
    };
    colour.map(|part| {
        let part = f64::from(part);
        (part + (255.0 - part) * lightness).round() as u8
    })
}

/// As SVG and HTML spell it; short where it can be.
pub(super) fn hex([red, green, blue]: Rgb) -> String {
    let short = |part: u8| part >> 4 == part & 15;
    if short(red) && short(green) && short(blue) {
        format!("#{:x}{:x}{:x}", red & 15, green & 15, blue & 15)
    } else {
        format!("#{red:02x}{green:02x}{blue:02x}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Relative luminance as WCAG 2.1 defines it, for a check that is not the table itself.
    fn luminance(colour: Rgb) -> f64 {
        let linear = colour.map(|part| {
            let part = f64::from(part) / 255.0;
            if part <= 0.040_45 {
                part / 12.92
            } else {
                ((part + 0.055) / 1.055).powf(2.4)
            }
        });
        0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]
    }

    #[test]
    fn every_colour_can_be_read_on_white_and_in_grey() {
        for layer in Layer::ALL {
            let contrast = 1.05 / (luminance(colour(Ink::Colour, layer)) + 0.05);
            // WCAG 2.1, success criterion 1.4.3: 4.5 to 1 for text.
            assert!(contrast >= 4.5, "{layer:?}: {contrast}");
            assert_eq!(colour(Ink::Black, layer), [0, 0, 0]);
        }
    }

    #[test]
    fn no_two_layers_look_alike() {
        for (i, first) in Layer::ALL.into_iter().enumerate() {
            for second in &Layer::ALL[i + 1..] {
                assert_ne!(own(first), own(*second), "{first:?} and {second:?}");
            }
        }
    }

    #[test]
    fn fills_go_from_the_colour_to_white() {
        assert_eq!(tint([0, 100, 255], 0.0), [0, 100, 255]);
        assert_eq!(tint([0, 100, 255], 0.5), [128, 178, 255]);
        assert_eq!(tint([0, 100, 255], 7.0), [255, 255, 255]);
        assert_eq!(hex([0, 0x11, 0xff]), "#01f");
        assert_eq!(hex([0, 0x10, 0xff]), "#0010ff");
    }
}
