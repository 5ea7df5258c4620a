//! Trade files resolved.

use super::gather::Gather;
use super::supplies::{Context, entries};
use crate::catalog::{TRADE_FILES, TradeData};
use crate::diagnostics::{Finding, Place, Verdict, in_order};
use crate::parameters::{Units, read_trade};
use crate::units::Notation;
use std::sync::OnceLock;

/// The trade data that comes with the program; its prices are invented examples.
pub fn shipped_trade() -> &'static TradeData {
    static DATA: OnceLock<TradeData> = OnceLock::new();
    DATA.get_or_init(|| {
        let mut data = TradeData::default();
        for (_, text) in TRADE_FILES {
            add_trade(&mut data, text);
        }
        data
    })
}

/// Adds what a trade file says to trade data, and gives everything that is wrong with the file, in its order.
///
/// Nothing is added when one of the findings is an error; what only fails is left out.
pub fn add_trade(data: &mut TradeData, text: &str) -> Vec<Finding> {
    let reading = read_trade(text);
    let mut gather = Gather::new(Notation::Imperial);
    gather.findings = reading.findings;
    if !reading.is_usable {
        return gather.findings;
    }
    let top = Place {
        line: 1,
        column: 1,
        ..Place::default()
    };
    let context = Context {
        things: None,
        currency: None,
        units: reading.file.units.value().map(|u| match u {
            Units::Imperial => Notation::Imperial,
            Units::Metric => Notation::Metric,
        }),
    };
    gather.needed(&reading.file.supplies, &top, "supplies");
    let found = entries(&mut gather, &reading.file.supplies, &context);
    if gather.findings.iter().all(|f| f.verdict < Verdict::Error) {
        for mut entry in found {
            // Its lines are not those of the parameter file, of which findings speak later.
            for supply in &mut entry.supplies {
                supply.place = Place::default();
            }
            data.put(entry);
        }
    }
    in_order(gather.findings)
}
