//! The takeoff of a parameter file, alone or beside another's.

use super::{OutputFile, OutputGroup, TradeData, check, file, workshop};
use crate::catalog::PaperKind;
use crate::diagnostics::{Finding, Place, in_order};
use crate::parts;
use crate::plan::Plan;
use crate::table::Table;
use crate::takeoff::{self, Compared, Takeoff};
use crate::units::Notation;
use crate::write::{self, Book};

/// A parameter file with everything that is reckoned of it.
#[derive(Clone, Debug)]
pub struct Reckoned {
    plan: Plan,
    takeoff: Takeoff,
}

/// Reads, plans, builds and reckons: what `takeoff` and `compare` do.
///
/// # Errors
/// Everything that keeps the file from being built, each with its place.
pub fn reckon(text: &str, trade: &TradeData) -> Result<Reckoned, Vec<Finding>> {
    let plan = check(text, trade)?;
    let takeoff = takeoff::reckon(&plan, &parts::build(&plan));
    Ok(Reckoned { plan, takeoff })
}

impl Reckoned {
    /// The takeoff as tables, in the order they are printed.
    pub fn tables(&self) -> Vec<Table> {
        takeoff::tables(&self.plan, &self.takeoff)
    }

    /// What there is to say about it.
    pub fn findings(&self) -> Vec<Finding> {
        findings(&self.plan, &self.takeoff)
    }

    /// What differs in another one; no rows when nothing does.
    pub fn differences(&self, other: &Self) -> Table {
        let checks = [self, other].map(|one| super::checks::findings(&one.plan));
        let [first, second] =
            [(self, &checks[0]), (other, &checks[1])].map(|(one, checks)| Compared {
                plan: &one.plan,
                takeoff: &one.takeoff,
                checks,
            });
        takeoff::differences(first, second)
    }
}

/// What there is to say about a takeoff, in the order of the file.
pub(super) fn findings(plan: &Plan, takeoff: &Takeoff) -> Vec<Finding> {
    let all = plan.design.findings.iter().chain(&takeoff.findings);
    in_order(all.cloned().collect())
}

/// The takeoff's folder.
///
/// # Errors
/// When a file cannot be written as its format asks.
pub(super) fn outputs(plan: &Plan, takeoff: &Takeoff) -> Result<OutputGroup, Vec<Finding>> {
    let tables = takeoff::tables(plan, takeoff);
    let project = &plan.design.project;
    let book = Book {
        title: format!("{}: takeoff", project.title),
        author: project.drawn_by.clone(),
        paper: match project.units {
            Notation::Imperial => PaperKind::Letter,
            Notation::Metric => PaperKind::A4,
        },
    };
    let workbook = write::xlsx(&tables, &book).map_err(|e| fault("takeoff-workbook", &e))?;
    let mut files = vec![
        file("takeoff/takeoff.xlsx", workbook),
        file(
            "takeoff/takeoff.json",
            write::tables_json(&tables).into_bytes(),
        ),
    ];
    files.extend(tables.iter().map(|table| OutputFile {
        path: format!("takeoff/{}.csv", table.name),
        bytes: write::csv(table),
    }));
    files.extend(workshop::outputs(plan, takeoff)?);
    Ok(OutputGroup {
        folder: "takeoff",
        about: "what to cut and to buy as workbook, JSON and CSV; sheets for the workshop; labels",
        files,
    })
}

/// That a writer refused what it should take.
pub(super) fn fault(code: &'static str, error: &dyn std::error::Error) -> Vec<Finding> {
    let found = Finding::error(code, &Place::default(), error.to_string());
    vec![found.hint("this is a fault of the program: please report it with the parameter file")]
}
