//! The printable scale model resolved.

use super::gather::{Gather, Limits};
use crate::design::{Placed, Printer, ScaleModel};
use crate::parameters::{self, Dimension, Given, ScaleText};
use crate::units::Length;

/// The usual room of a printer, millimetres: common practice.
const BED: [f64; 3] = [220.0, 220.0, 250.0];
/// The usual bore of a nozzle, millimetres: common practice.
const NOZZLE: f64 = 0.4;
/// The usual gap on each side between pieces that go into each other, millimetres: common practice.
const CLEARANCE: f64 = 0.2;
/// The usual thinnest wall as a multiple of the nozzle, two lines side by side: common practice.
const LINES: f64 = 2.0;

/// How the scale model is made and printed.
pub(super) fn scale_model(g: &mut Gather, given: &Given<parameters::ScaleModel>) -> ScaleModel {
    let empty = parameters::ScaleModel::default();
    let none = parameters::Printer::default();
    let s = given.value().unwrap_or(&empty);
    ScaleModel {
        scale: scale(g, &s.scale),
        printer: printer(g, s.printer.value().unwrap_or(&none)),
        place: given.place(),
    }
}

fn printer(g: &mut Gather, p: &parameters::Printer) -> Printer {
    let none = parameters::Bed::default();
    let bed = p.bed.value().unwrap_or(&none);
    let mut length = |given: &Given<Dimension>, usual: f64, limits: Limits| {
        g.length_or(given, Length::millimetres(usual), limits)
    };
    let room = Limits(20.0, 5000.0);
    let bed = [
        length(&bed.x, BED[0], room),
        length(&bed.y, BED[1], room),
        length(&bed.z, BED[2], room),
    ];
    let nozzle = length(&p.nozzle, NOZZLE, Limits(0.05, 5.0));
    let wall = length(&p.wall, LINES * nozzle.mm(), Limits(0.05, 20.0));
    let clearance = length(&p.clearance, CLEARANCE, Limits(0.0, 2.0));
    if wall.mm() < nozzle.mm() - 1e-9 {
        let found = format!(
            "a wall of {} is thinner than the nozzle of {}",
            millimetres(wall.value),
            millimetres(nozzle.value)
        );
        let hint = format!(
            "make the wall {} or more: two lines of the nozzle",
            millimetres(nozzle.value * LINES)
        );
        g.error("scale-wall", &wall.place, found, hint);
    }
    Printer {
        bed,
        nozzle,
        wall,
        clearance,
    }
}

/// A length of the printer's, which is in millimetres whatever the file's units are.
fn millimetres(length: Length) -> String {
    format!("{} mm", (length.mm() * 1000.0).round() / 1000.0)
}

/// How many times smaller; the finding is put down when that is no scale.
fn scale(g: &mut Gather, given: &Given<ScaleText>) -> Option<Placed<f64>> {
    let Given::Yes(ScaleText(text), place) = given else {
        return None;
    };
    let words = text.trim();
    let times = words.split_once(':').and_then(|(one, times)| {
        let times = times.trim();
        let is_figure = times.bytes().all(|b| b.is_ascii_digit() || b == b'.');
        (one.trim() == "1" && is_figure)
            .then(|| times.parse::<f64>().ok())
            .flatten()
    });
    let usual = "write a scale such as 1:12, a twelfth of the true size";
    match times {
        Some(times) if (2.0..=500.0).contains(&times) => Some(Placed {
            value: times,
            place: place.clone(),
        }),
        Some(times) => {
            let sense = match times {
                0.0 => "is no scale",
                t if t < 2.0 => "is too large for a model",
                _ => "is too small for a model",
            };
            let found = format!("the scale {words} {sense}");
            g.error(
                "scale-out-of-range",
                place,
                found,
                format!("{usual}; from 1:2 to 1:500"),
            );
            None
        }
        None => {
            let found = format!("'{}' is not a scale", words.escape_debug());
            g.error("bad-scale", place, found, usual);
            None
        }
    }
}
