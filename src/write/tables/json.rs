//! Tables as JSON.

use crate::table::{Cell, Table};
use serde_json::{Map, Number, Value, json};

/// Writes tables as one JSON object keyed by their names in `snake_case`; each has its title, the units of its
/// columns that have one, and its rows, objects keyed by the headings in `snake_case`.
///
/// A number is a number with the decimals that every other writer prints, nothing is null.
pub fn tables_json(tables: &[Table]) -> String {
    let names = keys(tables.iter().map(|t| (t.name.as_str(), "")));
    let all: Map<String, Value> = names.into_iter().zip(tables.iter().map(one)).collect();
    format!("{:#}\n", Value::Object(all))
}

fn one(table: &Table) -> Value {
    let columns = keys(
        table
            .columns
            .iter()
            .map(|c| (c.heading.as_str(), c.unit.as_str())),
    );
    let named = columns.iter().zip(&table.columns);
    let units: Map<String, Value> = named
        .filter(|(_, column)| !column.unit.is_empty())
        .map(|(key, column)| (key.clone(), column.unit.clone().into()))
        .collect();
    let row = |cells: &Vec<Cell>| -> Value {
        let pairs = columns.iter().cloned().zip(cells.iter().map(value));
        Value::Object(pairs.collect())
    };
    let rows: Vec<Value> = table.rows.iter().map(row).collect();
    json!({"title": table.title, "units": units, "rows": rows})
}

fn value(cell: &Cell) -> Value {
    match (cell, cell.rounded()) {
        (Cell::Text(text), _) => text.clone().into(),
        (Cell::Number { decimals: 0, .. }, Some(number)) if number.abs() < 9e15 => {
            Value::from(number as i64)
        }
        (Cell::Number { .. }, Some(number)) => {
            Number::from_f64(number).map_or(Value::Null, Value::Number)
        }
        _ => Value::Null,
    }
}

/// One key a heading, each once: of two that come to the same key the second takes its unit too, or is numbered.
fn keys<'a>(headings: impl Iterator<Item = (&'a str, &'a str)>) -> Vec<String> {
    let mut keys: Vec<String> = Vec::new();
    for (heading, unit) in headings {
        let bare = snake_case(heading);
        let with_unit = (!unit.is_empty()).then(|| snake_case(&format!("{heading} {unit}")));
        let numbered = (2..).map(|n| format!("{bare}_{n}"));
        let mut candidates = std::iter::once(bare.clone())
            .chain(with_unit)
            .chain(numbered);
        let free = candidates.find(|key| !keys.contains(key));
        keys.extend(free);
    }
    keys
}

fn snake_case(heading: &str) -> String {
    let words = heading.split(|c: char| !c.is_alphanumeric());
    let words: Vec<String> = words
        .filter(|w| !w.is_empty())
        .map(str::to_lowercase)
        .collect();
    if words.is_empty() {
        "column".to_owned()
    } else {
        words.join("_")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::table::Column;

    #[test]
    fn rows_are_objects_and_numbers_are_numbers() {
        let table = Table {
            name: "cut-list".into(),
            title: "Cut list".into(),
            columns: vec![
                Column::plain("mark"),
                Column::with_unit("length", "in"),
                Column::with_unit("length", "mm"),
                Column::plain("How many?"),
                Column::plain("how many"),
            ],
            rows: vec![vec![
                Cell::text("C-S01"),
                Cell::number(34.062_5, 2),
                Cell::Empty,
                Cell::count(3),
                Cell::count(-1),
            ]],
        };
        let read: Value = serde_json::from_str(&tables_json(&[table])).unwrap();
        let expected = json!({"cut_list": {
            "title": "Cut list",
            "units": {"length": "in", "length_mm": "mm"},
            // Ties go to the even digit in Rust's printing of an exact half: 34.0625 is 34.06.
            "rows": [{"mark": "C-S01", "length": 34.06, "length_mm": null, "how_many": 3, "how_many_2": -1}],
        }});
        assert_eq!(read, expected);
        assert!(read["cut_list"]["rows"][0]["how_many"].is_u64());
    }
}
