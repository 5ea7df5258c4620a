//! The quantities as a table.

use crate::plan::Plan;
use crate::table::{Cell, Column, Table};
use crate::takeoff::{Quantity, whereabouts};

/// One row a quantity, in the units of the file.
pub fn table(plan: &Plan, quantities: &[Quantity]) -> Table {
    let columns = ["item", "for", "run", "face", "amount", "unit", "reckoned"];
    Table {
        name: "quantities".to_owned(),
        title: "Quantities, exact and without spare".to_owned(),
        columns: columns.map(Column::plain).to_vec(),
        rows: quantities.iter().map(|q| row(plan, q)).collect(),
    }
}

fn row(plan: &Plan, quantity: &Quantity) -> Vec<Cell> {
    let (number, decimals, unit) = quantity.amount.measure(plan.design.project.units);
    let need = quantity.need.as_ref().map(ToString::to_string);
    let run = quantity.run.and_then(|run| plan.design.runs.get(run));
    let face = quantity
        .face
        .map(|face| whereabouts(plan, None, Some(face)));
    vec![
        Cell::text(quantity.item.clone()),
        Cell::text(need.unwrap_or_default()),
        run.map_or(Cell::Empty, |run| Cell::text(run.name.value.clone())),
        Cell::text(face.unwrap_or_default()),
        Cell::number(number, decimals),
        Cell::text(unit),
        Cell::text(quantity.reckoned.clone()),
    ]
}
