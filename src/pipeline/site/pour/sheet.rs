//! What the pour sheet shows.

use super::facts::facts;
use super::spelling::{PROMISE, Told};
use super::tables;
use crate::drawing::site::pour::{Marked, PourSheet, Strip, StripHour, Worth};
use crate::plan::Plan;
use crate::site::pour::{Fitness, HourPlan, PourPlan, UNCERTAINTY};
use crate::table::{Cell, Column, Table};
use crate::units::Moment;

/// Hours shown before the pour and in all.
const BEFORE: f64 = 6.0;
const LONG: f64 = 42.0;

/// What hurts people.
const CAUTION: &str = "Wet cement burns skin and eyes: gloves, goggles, long sleeves, and water at hand; wash at once. Dry mix is silica dust: respirator while bags are opened. \
                       Bags are heavy: two people, or half bags. The bag's own instructions go before this sheet.";
const KEY: &str = "Placing: white is fit, light grey with care, dark grey not fit. Clock: the thick line is placing, the thinner one finishing, the numbers are the steps of the setting clock. \
                   Rain is not in it: have sheets ready, and do not begin under a sky that threatens.";

/// What the sheets show; nothing where the file says nothing of the pour.
pub(in crate::pipeline) fn sheet(plan: &Plan, pour: &PourPlan) -> Option<PourSheet> {
    if !plan.design.pour.place.is_known() {
        return None;
    }
    let told = Told(plan.design.project.units);
    let mut notes = vec![PROMISE.to_owned(), CAUTION.to_owned()];
    let strip = strip(pour, told);
    if strip.is_some() {
        notes.push(KEY.to_owned());
    }
    let tables = vec![
        (clock(pour, told), tables::clock_notes()),
        (plan_table(plan, pour, told), Vec::new()),
        (batches(pour, told), Vec::new()),
        (coats(pour), tables::coat_notes()),
    ];
    Some(PourSheet {
        strip,
        tables,
        notes,
    })
}

/// The hours round the pour; the first ones where there is no start.
fn strip(pour: &PourPlan, told: Told) -> Option<Strip> {
    let limits = pour.limits?;
    let first = pour.hours.first()?.hour.at;
    let from = pour
        .start
        .map_or(first, |s| s.plus_hours(-BEFORE))
        .max(first);
    let from = from.plus_hours(-from.hour_of_day().fract());
    let at = |m: Moment| m.hours_since(from);
    let is_shown = |h: &&HourPlan| (0.0..LONG).contains(&at(h.hour.at));
    let shown: Vec<&HourPlan> = pour.hours.iter().filter(is_shown).collect();
    let end = at(shown.last()?.hour.at) + 1.0;
    let hours: Vec<StripHour> = shown.iter().map(|h| hour(h, at(h.hour.at), told)).collect();
    let window = pour.window.as_ref();
    let marks = pour.start.iter().flat_map(|start| {
        let due = pour.clock.iter().zip(1..);
        due.map(|(d, number)| Marked {
            at: at(*start) + d.after.in_hours(),
            number,
        })
    });
    Some(Strip {
        from,
        long: end.max(2.0),
        hours,
        limit: told.drying(limits.evaporation),
        warmth: [limits.coldest, limits.hottest].map(|t| told.degrees(t)),
        units: [told.degree(), told.rate(), told.speed()],
        window: window
            .map(|w| [w.from, w.placed, w.finished].map(at))
            .filter(|w| w[0] >= 0.0 && w[0] < end),
        clock: marks.filter(|m| (0.0..end).contains(&m.at)).collect(),
    })
}

fn hour(h: &HourPlan, at: f64, told: Told) -> StripHour {
    let drying = |share: f64| told.drying(h.evaporation * share);
    StripHour {
        at,
        air: told.degrees(h.hour.air),
        concrete: told.degrees(h.concrete),
        wind: told.wind(h.hour.wind),
        evaporation: drying(1.0),
        band: [drying(1.0 - UNCERTAINTY), drying(1.0 + UNCERTAINTY)],
        worth: match h.fitness {
            Fitness::Fit => Worth::Fit,
            Fitness::Care => Worth::Care,
            Fitness::Not => Worth::Not,
        },
    }
}

fn table((name, title): (&str, &str), headings: &[&str], rows: Vec<Vec<Cell>>) -> Table {
    Table {
        name: name.to_owned(),
        title: title.to_owned(),
        columns: headings.iter().map(|h| Column::plain(h)).collect(),
        rows,
    }
}

fn plan_table(plan: &Plan, pour: &PourPlan, told: Told) -> Table {
    let rows = facts(plan, pour, told).into_iter();
    let rows = rows.map(|(what, said)| vec![Cell::text(what), Cell::text(said)]);
    table(("plan", "Plan"), &["what", "planned"], rows.collect())
}

/// The clock with the hour of the day of each step.
fn clock(pour: &PourPlan, told: Told) -> Table {
    let rows = pour.clock.iter().zip(1_u32..).map(|(d, number)| {
        let when = pour.start.map(|s| s.plus_hours(d.after.in_hours()));
        vec![
            Cell::count(number),
            Cell::text(d.step.name()),
            Cell::text(when.map_or_else(String::new, Moment::spell)),
            Cell::text(d.after.spell()),
            Cell::text(d.concrete.spell(told.0)),
            Cell::text(d.step.sign()),
        ]
    });
    let headings = [
        "no.",
        "step",
        "when",
        "after placing begins",
        "concrete",
        "sign",
    ];
    table(
        ("setting clock", "Setting clock"),
        &headings,
        rows.collect(),
    )
}

/// The batches of each mix.
fn batches(pour: &PourPlan, told: Told) -> Table {
    let rows = pour.mixed.iter().map(|m| {
        let water = m.water.map(|w| super::water(told.imperial(), w));
        let water = water.map_or_else(String::new, |(n, unit)| format!("{n:.2} {unit}"));
        vec![
            Cell::text(m.need.to_string()),
            Cell::text(m.bag.clone()),
            Cell::text(format!("{} + {}", m.net, m.count.saturating_sub(m.net))),
            Cell::text(m.batch.clone()),
            Cell::text(water),
            Cell::text(m.mark.clone()),
            Cell::count(m.batches),
        ]
    });
    let headings = [
        "mix",
        "bag",
        "bags + spare",
        "one batch",
        "water a batch",
        "mark in the bucket",
        "batches",
    ];
    table(("batches", "Batches"), &headings, rows.collect())
}

/// What waits for what with the coats, in the warmest hour.
fn coats(pour: &PourPlan) -> Table {
    let rows = crate::site::pour::COATS.iter().map(|c| {
        let hours = crate::units::TimeSpan::hours(c.hours_at(pour.warmest()));
        vec![
            Cell::text(c.of),
            Cell::text(c.step),
            Cell::text(hours.spell()),
            Cell::text(c.said),
        ]
    });
    let headings = ["coat", "step", "time", "sign or source"];
    table(
        ("coats", "Base and finish coats in heat"),
        &headings,
        rows.collect(),
    )
}
