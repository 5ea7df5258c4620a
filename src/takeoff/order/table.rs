//! The order as tables.

use super::{Order, Purchase};
use crate::plan::Plan;
use crate::table::{Cell, Column, Table};
use crate::units::Money;

/// One row a line, shop by shop.
pub(in crate::takeoff) fn table(order: &Order) -> Table {
    let money = order.currency.to_string();
    let columns = [
        Column::plain("shop"),
        Column::plain("item"),
        Column::plain("for"),
        Column::plain("needed"),
        Column::plain("spare"),
        Column::plain("buy"),
        Column::plain("unit"),
        Column::with_unit("price", &money),
        Column::with_unit("cost", &money),
        Column::plain("note"),
    ];
    Table {
        name: "order".to_owned(),
        title: "Order list, before tax".to_owned(),
        columns: columns.to_vec(),
        rows: order.lines.iter().map(row).collect(),
    }
}

fn row(line: &Purchase) -> Vec<Cell> {
    let note = match (line.count, line.price, line.example) {
        (None, ..) => "nothing in supplies serves it",
        (_, None, _) => "no price",
        (_, Some(_), true) => "example price",
        _ => "",
    };
    let needs: Vec<_> = line.needs.iter().map(ToString::to_string).collect();
    vec![
        Cell::text(line.shop.clone()),
        Cell::text(line.name.clone()),
        Cell::text(needs.join(", ")),
        Cell::text(line.needed.clone()),
        Cell::text(line.spare.clone()),
        line.count.map_or(Cell::Empty, Cell::count),
        Cell::text(line.unit.clone()),
        line.price.map_or(Cell::Empty, cell),
        line.cost().map_or(Cell::Empty, cell),
        Cell::text(note),
    ]
}

/// What it comes to: by shop, before tax, tax, total, what each run takes of it, and how many lines are in none of these.
pub(in crate::takeoff) fn totals(plan: &Plan, order: &Order) -> Table {
    let unpriced = order.unpriced().count() as u32;
    let examples = if order.has_examples() {
        "example prices among them"
    } else {
        ""
    };
    let tax = plan.design.buying.tax * 100.0;
    let mut rows: Vec<_> = order
        .by_shop()
        .map(|(shop, amount)| {
            let name = if shop.is_empty() {
                "no known shop"
            } else {
                shop
            };
            vec![Cell::text(name), cell(amount), Cell::text("before tax")]
        })
        .collect();
    rows.extend([
        vec![
            Cell::text("before tax"),
            cell(order.subtotal),
            Cell::text(examples),
        ],
        vec![
            Cell::text("tax"),
            cell(order.tax),
            Cell::text(format!("{tax:.2} %")),
        ],
        vec![Cell::text("total"), cell(order.total), Cell::Empty],
    ]);
    let runs = plan
        .design
        .runs
        .iter()
        .map(|r| format!("run {}", r.name.value));
    let names = runs.chain(["no single run".to_owned()]);
    rows.extend(
        names
            .zip(&order.per_run)
            .map(|(name, amount)| vec![Cell::text(name), cell(*amount), Cell::text("with tax")]),
    );
    if unpriced > 0 {
        let note = "in the order list without a price; in no total";
        rows.push(vec![
            Cell::text(format!("lines without a price: {unpriced}")),
            Cell::Empty,
            Cell::text(note),
        ]);
    }
    Table {
        name: "totals".to_owned(),
        title: "What it costs".to_owned(),
        columns: vec![
            Column::plain("what"),
            Column::with_unit("amount", &order.currency.to_string()),
            Column::plain("note"),
        ],
        rows,
    }
}

fn cell(money: Money) -> Cell {
    Cell::number(money.in_cents() as f64 / 100.0, 2)
}
