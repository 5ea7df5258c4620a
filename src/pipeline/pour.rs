//! The pour plan of a parameter file, alone.

use super::{TradeData, site};
use crate::design::{self, Change};
use crate::diagnostics::{Finding, Verdict, in_order};
use crate::plan;
use crate::rules::{self, Subject};
use crate::table::Table;
use crate::units::{Moment, parse_moment};

/// What is asked otherwise than the file has it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PourAsked {
    /// When placing begins, as a moment.
    pub at: Option<String>,
    /// A forecast as CSV.
    pub forecast: Option<String>,
}

/// The pour plan with what there is to say about it.
#[derive(Clone, Debug, PartialEq)]
pub struct PourPlanned {
    /// The tables, in the order they are printed.
    pub tables: Vec<Table>,
    /// What is wrong with `pour` in the file, and what the checks of the pour say but passes.
    pub findings: Vec<Finding>,
}

/// The checks of the pour.
const CHECKS: [&str; 5] = [
    "weather-evaporation",
    "weather-hot-concrete",
    "weather-cold-concrete",
    "slab-placing-time",
    "slab-pour-size",
];

/// Plans the pour of a parameter file.
///
/// # Errors
/// Everything that keeps the file from being built, each with its place.
pub fn pour(text: &str, trade: &TradeData, asked: &PourAsked) -> Result<PourPlanned, Vec<Finding>> {
    let design = design::from_text_changed(text, trade, &changes(asked))?;
    let plan = plan::lay_out(design)?;
    let subject = Subject::new(&plan);
    let site = site::reckon(&plan, subject.assembly());
    let said = plan.design.findings.iter();
    let said = said.filter(|f| f.place.key == "pour" || f.place.key.starts_with("pour."));
    let rules = CHECKS.into_iter().filter_map(rules::rule);
    let checked = rules.flat_map(|r| rules::ask(r, &subject));
    let notable = checked.filter(|f| f.verdict != Verdict::Pass);
    Ok(PourPlanned {
        tables: site::pour_tables(&plan, &site),
        findings: in_order(said.cloned().chain(notable).collect()),
    })
}

/// The file with what is asked written into it.
fn changes(asked: &PourAsked) -> Vec<Change> {
    // A JSON string is YAML, whatever stands in it.
    let quoted = |text: &str| serde_json::Value::from(text).to_string();
    let mut all = Vec::new();
    if let Some(at) = &asked.at {
        all.push(Change::write("pour.at", &quoted(at)));
    }
    if let Some(csv) = &asked.forecast {
        all.push(Change::leave_out("pour.forecast.hours"));
        all.push(Change::write("pour.forecast.csv", &quoted(csv)));
    }
    all
}

/// Reads a moment as the command line has it.
///
/// # Errors
/// What is wrong with it, in a clause.
pub fn pour_moment(text: &str) -> Result<String, String> {
    parse_moment(text)
        .map(Moment::iso)
        .map_err(|e| e.to_string())
}
