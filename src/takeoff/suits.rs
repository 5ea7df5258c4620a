//! Whether a supply has the size that the design asks for.

use crate::catalog::{Need, Supply};
use crate::design::Design;
use crate::units::Length;

/// Sizes this near are the same, millimetres.
const SAME: f64 = 0.5;

/// A base channel may be so much deeper or less deep than board and base coat, millimetres: a coat is never truer (common
/// practice).
const CHANNEL: f64 = 1.6;

fn near(a: Length, b: Length, millimetres: f64) -> bool {
    (a - b).abs() < Length::millimetres(millimetres)
}

/// Screws and standoffs this near in length are the same, millimetres: a sixteenth of an inch and a little, so that what is
/// made in inches and in millimetres serves alike (common practice).
const AS_LONG: f64 = 2.0;

/// True when a supply serves its need in this design: it has the asked size and length, or none.
pub(super) fn suits(design: &Design, supply: &Supply, length: Option<Length>) -> bool {
    let as_long = match (supply.length, length) {
        (Some(has), Some(asked)) => (has - asked).abs() <= Length::millimetres(AS_LONG),
        _ => true,
    };
    as_long && has_size(design, supply) && is_the_fastener(design, supply)
}

/// True unless it is a steel screw whose name does not hold the size of the one that the design names.
fn is_the_fastener(design: &Design, supply: &Supply) -> bool {
    let asked = screw_size(&design.trade.fastener);
    supply.need != Need::SteelScrew
        || asked.is_none_or(|size| one_spelling(&supply.name).contains(&size))
}

/// The size at the head of a screw's description, up to its unit, such as `#8 × 1/2 in`; `None` where there is no unit.
fn screw_size(text: &str) -> Option<String> {
    let spelt = one_spelling(text);
    let words: Vec<&str> = spelt.split(' ').collect();
    let unit = words
        .iter()
        .position(|w| matches!(w.trim_end_matches(','), "in" | "mm"))?;
    let size = words[..=unit].join(" ");
    Some(size.trim_end_matches(',').to_owned())
}

/// Small letters, one space between words, and one sign for times.
fn one_spelling(text: &str) -> String {
    let words = text.split_whitespace().map(|word| match word {
        "x" | "X" => "×".to_owned(),
        other => other.to_lowercase(),
    });
    words.collect::<Vec<_>>().join(" ")
}

/// True when it has the asked size, or none. Of a base channel only the width counts, which takes board and base coat.
pub(super) fn has_size(design: &Design, supply: &Supply) -> bool {
    let trade = &design.trade;
    let asked = match (&supply.need, &design.tile_band) {
        (Need::Sleeper, _) => (trade.sleeper_width.value, trade.sleeper_height.value),
        (Need::Tile, Some(band)) => (band.tile_width.value, band.tile_height.value),
        (Need::BaseChannel, _) => {
            let depth = trade.board_thickness.value + trade.base_coat.value;
            return supply.size.is_none_or(|size| near(size.0, depth, CHANNEL));
        }
        _ => return true,
    };
    supply
        .size
        .is_none_or(|size| near(size.0, asked.0, SAME) && near(size.1, asked.1, SAME))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalog::Form;
    use crate::design::sample::{design, run};
    use crate::diagnostics::Place;

    #[test]
    fn a_steel_screw_serves_by_the_size_that_the_design_names() {
        let size = |text: &str| screw_size(text);
        assert_eq!(size("#10 x 3/4 in hex-washer"), size("#10 × 3/4 IN, zinc"));
        assert_eq!(
            size("4.2 × 13 mm wafer-head").as_deref(),
            Some("4.2 × 13 mm")
        );
        assert_eq!(size("screw"), None);
        let mut design = design(vec![run("cook", 3000.0, None, &[])]);
        let screw = |name: &str| Supply {
            name: name.to_owned(),
            need: Need::SteelScrew,
            form: Form::Pack { count: 100 },
            size: None,
            length: None,
            shop: String::new(),
            price: None,
            example: false,
            place: Place::default(),
        };
        let small = screw("steel screw #8 × 1/2 in, wafer head, box of 100");
        assert!(suits(&design, &small, None), "the sample names no size");
        design.trade.fastener = "#10 x 3/4 in hex-washer self-drilling screw".to_owned();
        assert!(!suits(&design, &small, None));
        assert!(suits(
            &design,
            &screw("Steel screw #10 × 3/4 in, box"),
            None
        ));
    }

    #[test]
    fn a_base_channel_serves_by_its_width_and_a_sleeper_by_both_sides() {
        // The sample: board 12 and base coat 6, sleeper 89 × 38.
        let design = design(vec![run("cook", 3000.0, None, &[])]);
        let sized = |need: Need, width: f64, height: f64| {
            let mm = Length::millimetres;
            let supply = Supply {
                name: String::new(),
                need,
                form: Form::Stick { length: mm(3000.0) },
                size: Some((mm(width), mm(height))),
                length: None,
                shop: String::new(),
                price: None,
                example: false,
                place: Place::default(),
            };
            suits(&design, &supply, None)
        };
        assert!(sized(Need::BaseChannel, 19.0, 40.0) && sized(Need::BaseChannel, 18.0, 20.0));
        assert!(!sized(Need::BaseChannel, 25.4, 35.0));
        assert!(sized(Need::Sleeper, 89.4, 38.0) && !sized(Need::Sleeper, 89.0, 40.0));
    }
}
