//! Tables on the terminal: for people, for spreadsheets, for programs.

use super::args::Tabular;
use super::console;
use super::outcome::Trouble;
use crate::pipeline::Table;
use crate::write::{csv, table_text, tables_json};

/// The tables, or the one of a name, in a format.
pub(super) fn tables(
    mut tables: Vec<Table>,
    only: Option<&str>,
    format: Tabular,
) -> Result<String, Trouble> {
    if let Some(name) = only {
        let known: Vec<_> = tables.iter().map(|t| t.name.clone()).collect();
        tables.retain(|t| t.name == *name);
        if tables.is_empty() {
            let what = format!("there is no table {name}");
            let hint = format!("one of: {}", known.join(", "));
            return Err(Trouble::new(what, hint));
        }
    }
    Ok(match format {
        Tabular::Json => tables_json(&tables),
        Tabular::Table => {
            let width = console::width();
            let shown: Vec<_> = tables.iter().map(|t| table_text(t, width)).collect();
            shown.join("\n")
        }
        Tabular::Csv => {
            let printed = tables.iter().map(|table| {
                let records = String::from_utf8_lossy(&csv(table)).into_owned();
                let name = if only.is_some() {
                    String::new()
                } else {
                    format!("{}\r\n", table.name)
                };
                name + &records
            });
            printed.collect::<Vec<_>>().join("\r\n")
        }
    })
}
