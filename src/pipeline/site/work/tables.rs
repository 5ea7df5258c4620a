//! Tables of the order of work.

use crate::plan::Plan;
use crate::site::work::{Order, Step};
use crate::table::{Cell, Column, Table};
use crate::units::Moment;

/// Its tables: steps, what they wait for, what is ticked.
pub fn tables(_: &Plan, order: &Order) -> Vec<Table> {
    vec![steps(order), waits(order), checklist(order)]
}

fn steps(order: &Order) -> Table {
    let columns = [
        ("no.", ""),
        ("step", ""),
        ("name", ""),
        ("start", ""),
        ("end", ""),
        ("takes", "h"),
        ("takes from", ""),
        ("float", "h"),
        ("critical", ""),
        ("hands", ""),
        ("by", ""),
        ("hold point", ""),
        ("weather", ""),
        ("handles", ""),
        ("tools", ""),
        ("caution", ""),
    ];
    let rows = order.steps.iter().enumerate();
    Table {
        name: "steps".to_owned(),
        title: "Order of work".to_owned(),
        columns: columns
            .iter()
            .map(|(h, u)| Column::with_unit(h, u))
            .collect(),
        rows: rows.map(|(i, step)| row(i, step)).collect(),
    }
}

fn yes(is: bool) -> Cell {
    Cell::text(if is { "yes" } else { "no" })
}

fn row(number: usize, step: &Step) -> Vec<Cell> {
    let times = step.times.as_ref();
    let moment = |m: Option<Moment>| Cell::text(m.map(Moment::iso).unwrap_or_default());
    vec![
        Cell::count((number + 1) as f64),
        Cell::text(step.what.id),
        Cell::text(step.what.name),
        moment(times.map(|t| t.start)),
        moment(times.map(|t| t.end)),
        Cell::number(step.takes.in_hours(), 2),
        Cell::text(step.source.name()),
        times.map_or(Cell::Empty, |t| Cell::number(t.float.in_hours(), 2)),
        times.map_or(Cell::Empty, |t| yes(t.is_critical)),
        Cell::count(f64::from(step.hands)),
        Cell::text(step.what.by.name()),
        yes(step.what.is_hold),
        Cell::text(step.what.fitness.name()),
        Cell::text(step.pieces.join("; ")),
        Cell::text(step.what.tools.join("; ")),
        Cell::text(step.cautions.join(" ")),
    ]
}

fn waits(order: &Order) -> Table {
    let name = |i: usize| order.steps.get(i).map_or("", |s| s.what.id);
    let rows = order.waits.iter().map(|w| {
        vec![
            Cell::text(name(w.to)),
            Cell::text(name(w.from)),
            Cell::number(w.wait.in_hours(), 2),
            Cell::text(w.why.clone()),
        ]
    });
    Table {
        name: "step-waits".to_owned(),
        title: "What each step waits for".to_owned(),
        columns: vec![
            Column::plain("step"),
            Column::plain("after"),
            Column::with_unit("wait", "h"),
            Column::plain("why"),
        ],
        rows: rows.collect(),
    }
}

fn checklist(order: &Order) -> Table {
    let steps = order.steps.iter().enumerate();
    let rows = steps.flat_map(|(i, step)| {
        let items = step.checks.iter().enumerate();
        items.map(move |(k, item)| {
            vec![
                Cell::text(format!("{}.{}", i + 1, k + 1)),
                Cell::text(step.what.id),
                yes(step.what.is_hold),
                Cell::text(item.clone()),
            ]
        })
    });
    Table {
        name: "checklist".to_owned(),
        title: "What is ticked".to_owned(),
        columns: ["no.", "step", "hold point", "tick"]
            .map(Column::plain)
            .to_vec(),
        rows: rows.collect(),
    }
}
