//! The schedules of appliances: sizes and places, then what their instructions say.

use super::spelling::Spelling;
use crate::design::{Appliance, Drain, Front, Placed};
use crate::plan::Plan;
use crate::table::{Cell, Column, Table};
use crate::units::Unit;

/// Every appliance, one a row: where it stands, its cutout, body, flange and front.
pub fn appliance_schedule(plan: &Plan) -> Table {
    let spelling = Spelling::of(plan);
    Table {
        name: "appliance-schedule".to_owned(),
        title: "Appliances: place and size".to_owned(),
        columns: [
            "appliance",
            "what it is",
            "run",
            "middle from left end",
            "cutout, width × depth",
            "corner radius",
            "body, width × depth × height",
            "flange over counter",
            "front",
        ]
        .map(Column::plain)
        .to_vec(),
        rows: plan
            .design
            .appliances
            .iter()
            .map(|a| placed(plan, spelling, a))
            .collect(),
    }
}

/// Every appliance, one a row: what it runs on, its heat, weight, air, drain, and the clearances its instructions ask for.
pub fn rating_schedule(plan: &Plan) -> Table {
    let spelling = Spelling::of(plan);
    Table {
        name: "appliance-ratings".to_owned(),
        title: "Appliances: supply, weight and clearances".to_owned(),
        columns: [
            "appliance",
            "runs on",
            "heat input",
            "weight",
            "air to cutout, each side",
            "drain",
            "clear behind",
            "clear beside",
            "clear above",
            "clear below",
        ]
        .map(Column::plain)
        .to_vec(),
        rows: plan
            .design
            .appliances
            .iter()
            .map(|a| rated(spelling, a))
            .collect(),
    }
}

/// What stands below the first of these schedules.
pub fn appliance_notes(plan: &Plan) -> Vec<String> {
    vec![format!(
        "{} Body height below the top of the counter. Check every size against the appliance's own instructions before \
         steel is cut.",
        Spelling::of(plan).lengths_are()
    )]
}

/// What stands below the second one.
pub fn rating_notes() -> Vec<String> {
    vec![
        "Clear: distance to what can burn, as the file gives it from the appliance's own instructions, which decide. \
         – the file does not say: see its instructions."
            .to_owned(),
    ]
}

fn placed(plan: &Plan, spelling: Spelling, a: &Appliance) -> Vec<Cell> {
    let run = plan.design.runs.get(a.run).map_or("", |r| &r.name.value);
    let length = plan.runs.get(a.run).map_or(0.0, |r| r.length);
    let middle = crate::units::Length::millimetres(a.station.along(length));
    let front = match &a.front {
        Front::Closed { setback } => format!(
            "closed, cutout {} from the frame's face",
            spelling.length(setback.value)
        ),
        Front::Open { panel_height, .. } => {
            format!("open, panel {} high", spelling.length(panel_height.value))
        }
    };
    vec![
        Cell::text(&a.name),
        Cell::text(&a.kind),
        Cell::text(run),
        Cell::text(spelling.bare(middle)),
        spelling.size(&[a.cutout_width.value, a.cutout_depth.value]),
        Cell::text(spelling.bare(a.corner_radius.value)),
        spelling.size(&[a.body_width.value, a.body_depth.value, a.body_height.value]),
        Cell::text(spelling.bare(a.flange.value)),
        Cell::text(front),
    ]
}

fn rated(spelling: Spelling, a: &Appliance) -> Vec<Cell> {
    let rating = &a.rating;
    let amount = |unit: Unit, value: Option<f64>| {
        value.map_or(Cell::Empty, |v| Cell::text(spelling.amount(unit, v)))
    };
    let clear = &rating.clearance;
    vec![
        Cell::text(&a.name),
        Cell::text(rating.fuel.as_ref().map_or("", |f| f.name())),
        amount(Unit::Heat, rating.heat_input.as_ref().map(|h| h.w())),
        amount(Unit::Mass, rating.weight.as_ref().map(|w| w.kg())),
        spelling.perhaps(rating.gap.as_ref()),
        rating
            .drain
            .as_ref()
            .map_or(Cell::Empty, |d| drain(spelling, d)),
        spelling.perhaps(clear.back.as_ref()),
        spelling.perhaps(clear.sides.as_ref()),
        spelling.perhaps(clear.above.as_ref()),
        spelling.perhaps(clear.below.as_ref()),
    ]
}

fn drain(spelling: Spelling, d: &Placed<Drain>) -> Cell {
    let trap = match d.trapped.as_ref().map(|t| t.value) {
        Some(true) => ", with trap",
        Some(false) => ", without trap",
        None => "",
    };
    let [size, length, fall] = [&d.size, &d.length, &d.fall].map(|l| spelling.length(l.value));
    Cell::text(format!("{size} pipe, {length} long, falls {fall}{trap}"))
}
