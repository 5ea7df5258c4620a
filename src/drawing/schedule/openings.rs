//! The schedule of openings.

use super::spelling::Spelling;
use crate::design::{Cover, Hinge, Opening, OpeningKind, Protection, Side};
use crate::plan::Plan;
use crate::table::{Cell, Column, Table};
use crate::units::{Length, Unit};

/// Every opening in the faces, one a row: where it is, its clear size, how it opens, what is behind it.
pub fn opening_schedule(plan: &Plan) -> Table {
    let spelling = Spelling::of(plan);
    Table {
        name: "opening-schedule".to_owned(),
        title: "Openings".to_owned(),
        columns: [
            "opening",
            "what it is",
            "run and side",
            "middle from",
            "clear, width × height",
            "sill above datum",
            "flange over face",
            "reaches in",
            "weight",
            "how it opens; air; wiring",
        ]
        .map(Column::plain)
        .to_vec(),
        rows: plan
            .design
            .openings
            .iter()
            .map(|o| row(plan, spelling, o))
            .collect(),
    }
}

/// What stands below it.
pub fn opening_notes(plan: &Plan) -> Vec<String> {
    vec![format!(
        "{} Clear sizes are of the rough opening in the frame; for a vent or receptacle, of the hole in the board. Hung as \
         seen from outside. – the file does not say: see the maker's instructions.",
        Spelling::of(plan).lengths_are()
    )]
}

fn row(plan: &Plan, spelling: Spelling, o: &Opening) -> Vec<Cell> {
    let run = plan.design.runs.get(o.run).map_or("", |r| &r.name.value);
    let weight = o.hardware.weight.as_ref();
    vec![
        Cell::text(&o.name),
        Cell::text(o.kind.name()),
        Cell::text(format!("{run}, {}", o.side.name())),
        Cell::text(middle(plan, spelling, o)),
        spelling.size(&[o.width.value, o.height.value]),
        Cell::text(spelling.bare(o.sill.value)),
        Cell::text(spelling.bare(o.flange.value)),
        if o.body_depth.mm() > 0.0 {
            Cell::text(spelling.bare(o.body_depth.value))
        } else {
            Cell::Empty
        },
        weight.map_or(Cell::Empty, |w| {
            Cell::text(spelling.amount(Unit::Mass, w.kg()))
        }),
        Cell::text(about(spelling, o)),
    ]
}

/// Where its middle is: from the left end of its run, in an end face from the working side.
fn middle(plan: &Plan, spelling: Spelling, o: &Opening) -> String {
    let run = plan.runs.get(o.run);
    let (length, from) = match o.side {
        Side::Working | Side::Seating => (run.map_or(0.0, |r| r.length), "left end"),
        Side::Left | Side::Right => (run.map_or(0.0, |r| r.depth), "working side"),
    };
    let at = Length::millimetres(o.station.along(length));
    format!("{from} {}", spelling.length(at))
}

/// How it opens, and what the file says of its air or its wiring.
fn about(spelling: Spelling, o: &Opening) -> String {
    let said = match o.kind {
        OpeningKind::Vent => format!("free area {}", share(spelling, o)),
        OpeningKind::Receptacle => wiring(o),
        OpeningKind::Drawer => format!("comes out {}", spelling.length(o.hardware.travel.value)),
        OpeningKind::Door | OpeningKind::Hatch | OpeningKind::Undercounter => {
            hung(o.hardware.hinge.value).to_owned()
        }
    };
    if o.hardware.by_hand.value || o.kind == OpeningKind::Vent || o.kind == OpeningKind::Receptacle
    {
        said
    } else {
        format!("{said}, with tools")
    }
}

fn hung(hinge: Hinge) -> &'static str {
    match hinge {
        Hinge::Left => "hung left",
        Hinge::Right => "hung right",
        Hinge::Pair => "pair of leaves",
        Hinge::Bottom => "hung at the bottom",
        Hinge::Top => "hung at the top",
        Hinge::None => "lifts off",
    }
}

fn share(spelling: Spelling, o: &Opening) -> String {
    let area = o.hardware.free_area.as_ref();
    area.map_or_else(|| "–".to_owned(), |a| spelling.amount(Unit::Share, a.value))
}

/// Protection, cover and kind of a receptacle.
fn wiring(o: &Opening) -> String {
    let protection = match o.hardware.protection.as_ref().map(|p| p.value) {
        Some(Protection::GroundFault) => "ground-fault",
        Some(Protection::None) => "none",
        None => "–",
    };
    let cover = match o.hardware.cover.as_ref().map(|c| c.value) {
        Some(Cover::InUse) => "in use",
        Some(Cover::Flap) => "flap",
        Some(Cover::None) => "none",
        None => "–",
    };
    let weather = match o.hardware.weather_resistant.as_ref().map(|w| w.value) {
        Some(true) => "yes",
        Some(false) => "no",
        None => "–",
    };
    format!("protection {protection}; cover {cover}; weather-resistant {weather}")
}
