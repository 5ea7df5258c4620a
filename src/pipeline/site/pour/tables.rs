//! The pour's tables.

use super::spelling::{PROMISE, Told};
use super::water;
use crate::catalog::Need;
use crate::plan::Plan;
use crate::site::pour::{COATS, Fitness, HourPlan, PourPlan, UNCERTAINTY};
use crate::table::{Cell, Column, Table};
use crate::units::TimeSpan;

/// The plan in a few lines, the hours, the batches and the clock.
pub(in crate::pipeline) fn tables(plan: &Plan, pour: &PourPlan) -> Vec<Table> {
    let told = Told(plan.design.project.units);
    let mut tables = vec![summary(plan, pour, told)];
    if !pour.hours.is_empty() {
        tables.push(hours(pour, told));
    }
    tables.push(batches(pour, told));
    tables.push(clock(pour, told));
    tables
}

fn table(name: &str, title: String, columns: Vec<Column>, rows: Vec<Vec<Cell>>) -> Table {
    Table {
        name: name.to_owned(),
        title,
        columns,
        rows,
    }
}

fn summary(plan: &Plan, pour: &PourPlan, told: Told) -> Table {
    let rows = super::facts::facts(plan, pour, told);
    let rows = rows
        .into_iter()
        .map(|(what, said)| vec![Cell::text(what), Cell::text(said)]);
    let columns = ["what", "planned"].map(Column::plain).to_vec();
    table(
        "pour-plan",
        format!("Pour plan. {PROMISE}"),
        columns,
        rows.collect(),
    )
}

fn hours(pour: &PourPlan, told: Told) -> Table {
    let columns = vec![
        Column::plain("hour"),
        Column::with_unit("air", told.degree()),
        Column::with_unit("humidity", "%"),
        Column::with_unit("wind", told.speed()),
        Column::with_unit("wind at the surface", told.speed()),
        Column::with_unit("sun", "W/m²"),
        Column::with_unit("concrete", told.degree()),
        Column::with_unit("evaporation", told.rate()),
        Column::with_unit("at least", told.rate()),
        Column::with_unit("at most", told.rate()),
        Column::plain("placing"),
        Column::plain("against it"),
        Column::plain("what brings it under"),
        Column::plain("else wait until"),
        Column::with_unit("mix workable", "min"),
        Column::plain("coats"),
        Column::with_unit("coat workable", "min"),
    ];
    let rows = pour.hours.iter().map(|h| hour(h, told)).collect();
    let title = format!("Hours of the forecast, for concrete mixed and placed in each. {PROMISE}");
    table("pour-hours", title, columns, rows)
}

fn hour(h: &HourPlan, told: Told) -> Vec<Cell> {
    let drying = |share: f64| Cell::number(told.drying(h.evaporation * share), told.decimals());
    let minutes = |t: TimeSpan| Cell::number(t.in_hours() * 60.0, 0);
    let helps = match told.helps(h) {
        text if text.is_empty() && h.fitness == Fitness::Not => "nothing known".to_owned(),
        text => text,
    };
    vec![
        Cell::text(h.hour.at.iso()),
        Cell::number(told.degrees(h.hour.air), 1),
        Cell::number(h.hour.humidity * 100.0, 1),
        Cell::number(told.wind(h.hour.wind), 1),
        Cell::number(told.wind(h.wind), 2),
        h.hour.sun.map_or(Cell::Empty, |s| Cell::number(s, 0)),
        Cell::number(told.degrees(h.concrete), 1),
        drying(1.0),
        drying(1.0 - UNCERTAINTY),
        drying(1.0 + UNCERTAINTY),
        Cell::text(h.fitness.name()),
        Cell::text(Told::against(h)),
        Cell::text(helps),
        h.next.map_or(Cell::Empty, |m| Cell::text(m.iso())),
        minutes(h.working),
        Cell::text(h.coats.name()),
        minutes(h.coats_working),
    ]
}

fn batches(pour: &PourPlan, told: Told) -> Table {
    let unit = if told.imperial() { "qt" } else { "L" };
    let columns = vec![
        Column::plain("mix"),
        Column::plain("bag"),
        Column::plain("needed"),
        Column::plain("bags"),
        Column::plain("bags with spare"),
        Column::plain("one batch"),
        Column::with_unit("water a batch", unit),
        Column::plain("mark in the bucket"),
        Column::plain("batches"),
        Column::with_unit("placing", "min"),
    ];
    let rows = pour.mixed.iter().map(|m| {
        let is_slab = m.need == Need::Concrete;
        let placing = pour.placing.filter(|_| is_slab);
        vec![
            Cell::text(m.need.to_string()),
            Cell::text(m.bag.clone()),
            Cell::text(m.needed.clone()),
            Cell::count(m.net),
            Cell::count(m.count),
            Cell::text(m.batch.clone()),
            m.water.map_or(Cell::Empty, |w| {
                Cell::number(water(told.imperial(), w).0, 2)
            }),
            Cell::text(m.mark.clone()),
            Cell::count(m.batches),
            placing.map_or(Cell::Empty, |p| Cell::number(p.time.in_hours() * 60.0, 0)),
        ]
    });
    let title = "Batches. Dry mix is silica dust and wet cement burns: respirator, goggles, gloves; what the bag says goes before this table";
    table("pour-batches", title.to_owned(), columns, rows.collect())
}

fn clock(pour: &PourPlan, told: Told) -> Table {
    let columns = vec![
        Column::plain("of"),
        Column::plain("step"),
        Column::with_unit("after placing begins", "h"),
        Column::plain("when"),
        Column::with_unit("age at 70 °F", "h"),
        Column::with_unit("concrete", told.degree()),
        Column::plain("sign"),
    ];
    let mut rows: Vec<Vec<Cell>> = pour
        .clock
        .iter()
        .map(|d| {
            let when = pour.start.map(|s| s.plus_hours(d.after.in_hours()));
            vec![
                Cell::text("counter"),
                Cell::text(d.step.name()),
                Cell::number(d.after.in_hours(), 2),
                when.map_or(Cell::Empty, |m| Cell::text(m.iso())),
                Cell::number(d.age.in_hours(), 2),
                Cell::number(told.degrees(d.concrete), 1),
                Cell::text(d.step.sign()),
            ]
        })
        .collect();
    rows.extend(COATS.iter().map(|c| {
        vec![
            Cell::text(c.of),
            Cell::text(c.step),
            Cell::number(c.hours_at(pour.warmest()), 2),
            Cell::Empty,
            Cell::number(c.hours, 2),
            Cell::Empty,
            Cell::text(c.said),
        ]
    }));
    let title = "Setting clock, by equivalent age (ASTM C1074). The usual hours at 70 °F are common practice; the signs decide, not the clock. Coats: in the warmest hour of the forecast";
    table("setting-clock", title.to_owned(), columns, rows)
}

/// What is noted below the clock on a sheet.
pub(super) fn clock_notes() -> Vec<String> {
    vec![
        "By equivalent age (ASTM C1074) from the usual hours at 70 °F, which are common practice; of what was placed first. The sign decides, not the clock. Keep it damp under plastic for 7 days (ACI 308R, from memory)."
            .to_owned(),
    ]
}

/// What is noted below the coats on a sheet.
pub(super) fn coat_notes() -> Vec<String> {
    vec![
        "At the warmest hour of the forecast, 70 °F (21 °C) without one. Not in hot sun or drying wind, not above 100 °F (38 °C, common practice) nor below 40 °F (4 °C, ASTM C926, from memory): begin on the shaded side."
            .to_owned(),
    ]
}
