//! The unit in which something is sold, resolved.

use super::amounts::{Range, SOME, count};
use super::gather::{Gather, Limits};
use crate::catalog::{Form, Gives};
use crate::diagnostics::Place;
use crate::parameters::{AreaText, Dimension, Given, MassText, Sold, VolumeText};
use crate::units::{Area, Length, Mass, Volume, parse_area, parse_mass, parse_volume};

/// Sticks, sheets and rolls.
const LONG: Limits = Limits(1.0, 1.0e6);
/// Sheets: nothing for mesh.
const THICK: Limits = Limits(0.0, 200.0);
const COUNT: Range = Range {
    least: 1.0,
    most: 1.0e6,
    said: "1 or more",
};

/// The unit; `None` when it is missing or bad, which is put down.
pub(super) fn form(g: &mut Gather, sold: &Given<Sold>) -> Option<Form> {
    let unit = sold.value()?;
    let place = &below(&sold.place(), unit);
    match unit {
        Sold::Stick { length } => {
            let length = side(g, length, place, "length")?;
            Some(Form::Stick { length })
        }
        Sold::Sheet {
            length,
            width,
            thickness,
        } => sheet(g, length, width, thickness, place),
        Sold::Bag {
            weight,
            yields,
            covers,
            water,
            colour,
        } => {
            let mass = mass(g, weight, place);
            let gives = gives(g, yields, covers, place);
            let water = volume(g, water);
            let colour = g.text(colour, "");
            Some(Form::Bag {
                mass: mass?,
                gives: gives?,
                water,
                colour,
            })
        }
        Sold::Roll { length, width } => {
            let length = side(g, length, place, "length");
            let width = side(g, width, place, "width");
            Some(Form::Roll {
                length: length?,
                width: width?,
            })
        }
        Sold::Can { covers } => {
            g.is_there(covers, place, "covers");
            let covers = area(g, covers)?;
            Some(Form::Can { covers })
        }
        Sold::Pack { count: given } => {
            g.is_there(given, place, "count");
            let count = g.amount(given, &COUNT, count)?.value as u32;
            Some(Form::Pack { count })
        }
        Sold::Each => Some(Form::Each),
    }
}

/// The place of what stands below the unit's word.
fn below(place: &Place, unit: &Sold) -> Place {
    let word = match unit {
        Sold::Stick { .. } => "stick",
        Sold::Sheet { .. } => "sheet",
        Sold::Bag { .. } => "bag",
        Sold::Roll { .. } => "roll",
        Sold::Can { .. } => "can",
        Sold::Pack { .. } => "pack",
        Sold::Each => "each",
    };
    Place {
        key: format!("{}.{word}", place.key),
        ..place.clone()
    }
}

fn sheet(
    g: &mut Gather,
    length: &Given<Dimension>,
    width: &Given<Dimension>,
    thickness: &Given<Dimension>,
    place: &Place,
) -> Option<Form> {
    let long = side(g, length, place, "length");
    let short = side(g, width, place, "width");
    let thick = if thickness.is_absent() {
        Some(Length::ZERO)
    } else {
        g.soft_length(thickness, THICK)
    };
    let (long, short, thickness) = (long?, short?, thick?);
    if short > long {
        let hint = "length is the long side of a sheet: exchange the two";
        g.fail(
            "sheet-sides",
            &width.place(),
            "the sheet is wider than long",
            hint,
        );
        return None;
    }
    Some(Form::Sheet {
        length: long,
        width: short,
        thickness,
    })
}

fn side(g: &mut Gather, given: &Given<Dimension>, place: &Place, key: &str) -> Option<Length> {
    g.is_there(given, place, key);
    g.soft_length(given, LONG)
}

fn mass(g: &mut Gather, given: &Given<MassText>, place: &Place) -> Option<Mass> {
    g.is_there(given, place, "weight");
    let mass = g.amount(given, &SOME, |text| parse_mass(text).map(Mass::kg));
    mass.map(|m| Mass::kilograms(m.value))
}

fn gives(
    g: &mut Gather,
    yields: &Given<VolumeText>,
    covers: &Given<AreaText>,
    place: &Place,
) -> Option<Gives> {
    match (yields.is_absent(), covers.is_absent()) {
        (false, true) => volume(g, yields).map(Gives::Volume),
        (true, false) => area(g, covers).map(Gives::Area),
        (true, true) => {
            let found = "the bag says neither what it yields nor what it covers";
            let hint = "write yields: or covers: with the amount that is printed on the bag";
            g.fail("missing-key", place, found, hint);
            None
        }
        (false, false) => {
            let found = "the bag says both what it yields and what it covers";
            g.fail(
                "yields-and-covers",
                &covers.place(),
                found,
                "keep one of the two",
            );
            None
        }
    }
}

fn volume(g: &mut Gather, given: &Given<VolumeText>) -> Option<Volume> {
    let read = |text: &str| parse_volume(text).map(Volume::mm3);
    let volume = g.amount(given, &SOME, read);
    volume.map(|v| Volume::cubic_millimetres(v.value))
}

fn area(g: &mut Gather, given: &Given<AreaText>) -> Option<Area> {
    let area = g.amount(given, &SOME, |text| parse_area(text).map(Area::mm2));
    area.map(|a| Area::square_millimetres(a.value))
}
