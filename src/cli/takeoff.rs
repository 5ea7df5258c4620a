//! `takeoff`: quantities, cut lists and what to buy, printed.

use super::args::{Tabular, TakeoffArgs};
use super::outcome::{Outcome, Trouble};
use super::{console, input, trade};
use crate::pipeline;
use crate::write::{csv, table_text, tables_json};

pub(super) fn run(args: &TakeoffArgs) -> Result<Outcome, Trouble> {
    let trade = trade::read(&args.trade)?;
    let input = input::read(&args.file)?;
    if let Some(outcome) = trade.say() {
        return Ok(outcome);
    }
    let reckoned = match pipeline::reckon(&input.text, &trade.data) {
        Ok(reckoned) => reckoned,
        Err(findings) => {
            input.say(&findings);
            return Ok(trade.outcome(&findings));
        }
    };
    let mut tables = reckoned.tables();
    if let Some(name) = &args.table {
        let known: Vec<_> = tables.iter().map(|t| t.name.clone()).collect();
        tables.retain(|t| t.name == *name);
        if tables.is_empty() {
            let what = format!("there is no table {name}");
            let hint = format!("one of: {}", known.join(", "));
            return Err(Trouble::new(what, hint));
        }
    }
    let text = match args.format {
        Tabular::Json => tables_json(&tables),
        Tabular::Table => {
            let width = console::width();
            let shown: Vec<_> = tables.iter().map(|t| table_text(t, width)).collect();
            shown.join("\n")
        }
        Tabular::Csv => {
            let alone = args.table.is_some();
            let printed = tables.iter().map(|table| {
                let records = String::from_utf8_lossy(&csv(table)).into_owned();
                let name = if alone {
                    String::new()
                } else {
                    format!("{}\r\n", table.name)
                };
                name + &records
            });
            printed.collect::<Vec<_>>().join("\r\n")
        }
    };
    console::out(&text);
    let findings = reckoned.findings();
    input.say(&findings);
    Ok(trade.outcome(&findings))
}
