//! Buying resolved: what is bad takes its usual value and is said.

use super::amounts::{Range, SHARE, count};
use super::gather::{Gather, Limits};
use crate::design::{Buying, LabelPaper, Placed, Spare};
use crate::parameters::{self, Dimension, Given, Labels, PunchOuts, ShareText, VolumeText};
use crate::units::{Currency, Length, Notation, ParseError, Volume, parse_share, parse_volume};

const BAGS: Range = Range {
    least: 0.0,
    most: 1000.0,
    said: "0 to 1000",
};
const MIXER: Range = Range {
    least: 1.0e6,
    most: 3.0e9,
    said: "1 L to 3 m3",
};
const BUCKET: Range = Range {
    least: 1.0e6,
    most: 200.0e6,
    said: "1 L to 200 L",
};

/// Money, spares and tools.
pub(super) fn buying(g: &mut Gather, given: &Given<parameters::Buying>) -> Buying {
    let usual = Buying::usual(g.notation == Notation::Metric);
    let empty = parameters::Buying::default();
    let b = given.value().unwrap_or(&empty);
    let kerf = Limits(0.0, 12.0);
    let tax = share(g, &b.tax, &Placed::default());
    Buying {
        currency: currency(g, b).unwrap_or(usual.currency),
        tax: tax.value,
        spare: spare(g, &b.spare, &usual.spare),
        steel_kerf: length(g, &b.steel_kerf, usual.steel_kerf, kerf),
        saw_kerf: length(g, &b.saw_kerf, usual.saw_kerf, kerf),
        end_trim: length(g, &b.end_trim, usual.end_trim, Limits(0.0, 600.0)),
        longest_stick: placed(g, &b.longest_stick, Limits(300.0, 20_000.0)),
        aligned: b.punch_outs.value() != Some(&PunchOuts::AsTheyFall),
        mixer: volume(g, &b.mixer, usual.mixer, &MIXER),
        bucket: volume(g, &b.bucket, usual.bucket, &BUCKET),
        bucket_diameter: length(
            g,
            &b.bucket_diameter,
            usual.bucket_diameter,
            Limits(100.0, 1000.0),
        ),
        labels: match b.labels.value() {
            Some(Labels::Letter30) => LabelPaper::Letter30,
            Some(Labels::A4x24) => LabelPaper::A4x24,
            None => usual.labels,
        },
    }
}

fn currency(g: &mut Gather, given: &parameters::Buying) -> Option<Currency> {
    let read = |text: &str| {
        Currency::from_code(text.trim()).ok_or_else(|| ParseError {
            problem: format!("'{}' is not a currency", text.escape_debug()),
            hint: "write its three capital letters, such as USD or EUR".to_owned(),
        })
    };
    g.written(&given.currency, read).map(|c| c.value)
}

fn spare(g: &mut Gather, given: &Given<parameters::Spare>, usual: &Spare) -> Spare {
    let empty = parameters::Spare::default();
    let s = given.value().unwrap_or(&empty);
    let bags = g.amount(&s.concrete_bags, &BAGS, count);
    Spare {
        concrete: share(g, &s.concrete, &usual.concrete),
        concrete_bags: bags.map_or(usual.concrete_bags, |b| b.value as u32),
        coats: share(g, &s.coats, &usual.coats),
        mortar: share(g, &s.mortar, &usual.mortar),
        tile: share(g, &s.tile, &usual.tile),
        small: share(g, &s.small, &usual.small),
        mesh: share(g, &s.mesh, &usual.mesh),
        liquid: share(g, &s.liquid, &usual.liquid),
    }
}

fn share(g: &mut Gather, given: &Given<ShareText>, usual: &Placed<f64>) -> Placed<f64> {
    let share = g.amount(given, &SHARE, parse_share);
    share.unwrap_or_else(|| usual.clone())
}

fn length(g: &mut Gather, given: &Given<Dimension>, usual: Length, limits: Limits) -> Length {
    g.soft_length(given, limits).unwrap_or(usual)
}

fn placed(g: &mut Gather, given: &Given<Dimension>, limits: Limits) -> Option<Placed<Length>> {
    let value = g.soft_length(given, limits)?;
    Some(Placed {
        value,
        place: given.place(),
    })
}

fn volume(g: &mut Gather, given: &Given<VolumeText>, usual: Volume, range: &Range) -> Volume {
    let read = |text: &str| parse_volume(text).map(Volume::mm3);
    let volume = g.amount(given, range, read);
    volume.map_or(usual, |v| Volume::cubic_millimetres(v.value))
}
