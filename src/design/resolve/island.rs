//! The whole file resolved.

use super::gather::{Gather, last_key};
use super::services::{self, Served};
use super::trade_files::shipped_trade;
use super::{
    as_built, buying, counter, drawings, making, openings, pour, project, runs, scale_model, site,
    supplies, things, trade, work,
};
use crate::catalog::TradeData;
use crate::design::Design;
use crate::diagnostics::{Finding, Place, Verdict, in_order};
use crate::parameters::{Change, File, Reading, Units, read, read_changed};
use crate::units::Notation;

/// Fills every default of a file and follows every reference; what shops sell is the trade data and what the file adds.
///
/// # Errors
/// Everything in the file that makes no sense, in the order of the file.
pub fn resolve(file: &File, known: &TradeData) -> Result<Design, Vec<Finding>> {
    let units = file.project.value().and_then(|p| p.units.value());
    let notation = match units {
        Some(Units::Metric) => Notation::Metric,
        _ => Notation::Imperial,
    };
    let mut gather = Gather::new(notation);
    let g = &mut gather;
    let top = Place {
        line: 1,
        column: 1,
        ..Place::default()
    };
    let project = project::project(g, &file.project, &top);
    let trade = trade::trade(g, &file.trade);
    let levels = project::levels(g, &file.levels);
    let trade = trade::with_sleeper(g, trade, &file.trade, &levels);
    let runs = runs::runs(g, &file.runs, &top);
    let things = things::things(g, file, &runs);
    let appliances = openings::appliances(g, &things, &runs);
    let openings = openings::openings(g, &things, &runs);
    let counter = counter::counter(g, &file.counter, &runs);
    let tile_band = counter::tile_band(g, &file.tile_band, &runs);
    let printing = project::printing(g, &file.printing);
    let drawings = drawings::drawings(g, &file.drawings, &runs);
    let scale_model = scale_model::scale_model(g, &file.scale_model);
    let making = making::making(g, &file.trade, &file.tile_band);
    let compartments = services::compartments(g, &file.compartments, &runs, &levels);
    let served = Served {
        appliances: &appliances,
        openings: &openings,
        compartments: &compartments,
    };
    let gas = services::gas(g, &file.gas, &served);
    let electricity = services::electricity(g, &file.electricity, &served);
    let site = site::site(g, &file.site);
    let people = site::people(g, &file.people);
    let limits = site::limits(g, &file.limits);
    let as_built = as_built::as_built(g, &file.as_built, &runs);
    let pour = pour::pour(g, &file.pour);
    let work = work::work(g, &file.work);
    let buying = buying::buying(g, &file.buying);
    let supplies = supplies::of_design(g, file, known, &buying);
    let is_usable = gather.findings.iter().all(|f| f.verdict < Verdict::Error);
    let findings = in_order(gather.findings);
    match trade {
        Some(trade) if is_usable => Ok(Design {
            project,
            trade,
            levels,
            runs,
            appliances,
            openings,
            counter,
            tile_band,
            printing,
            drawings,
            scale_model,
            making,
            compartments,
            gas,
            electricity,
            site,
            people,
            limits,
            as_built,
            pour,
            work,
            buying,
            supplies,
            findings,
        }),
        _ => Err(findings),
    }
}

/// Reads and resolves a parameter file, with the trade data that comes with the program.
///
/// ```
/// let text = "project: {title: Bench}\nruns: [{name: cook, length: 6 ft, depth: 30 in}]\n";
/// let design = islandwright::design::from_text(text).unwrap();
/// assert_eq!(design.levels.counter.in_inches(), 36.0);
/// ```
///
/// # Errors
/// All errors of the file at once, of its form and of its sense, in the order of the file.
pub fn from_text(text: &str) -> Result<Design, Vec<Finding>> {
    from_text_with(text, shipped_trade())
}

/// Reads and resolves a parameter file, with trade data of one's own.
///
/// # Errors
/// All errors of the file at once, of its form and of its sense, in the order of the file.
pub fn from_text_with(text: &str, known: &TradeData) -> Result<Design, Vec<Finding>> {
    resolve_reading(read(text), known)
}

/// Reads and resolves a parameter file as if some keys were written otherwise.
///
/// # Errors
/// All errors of the changed file at once, in the order of the file.
pub fn from_text_changed(
    text: &str,
    known: &TradeData,
    changes: &[Change],
) -> Result<Design, Vec<Finding>> {
    resolve_reading(read_changed(text, changes), known)
}

fn resolve_reading(reading: Reading, known: &TradeData) -> Result<Design, Vec<Finding>> {
    if !reading.is_usable {
        return Err(reading.findings);
    }
    match resolve(&reading.file, known) {
        Ok(design) if reading.findings.is_empty() => Ok(design),
        Ok(design) => {
            let all = reading.findings.into_iter().chain(design.findings);
            Err(in_order(all.collect()))
        }
        Err(more) => {
            let mut findings = reading.findings;
            let more: Vec<_> = more
                .into_iter()
                .filter(|f| !is_misspelt(f, &findings))
                .collect();
            findings.extend(more);
            Err(in_order(findings))
        }
    }
}

/// True when a key is missing only because it is misspelt, which has been said.
fn is_misspelt(finding: &Finding, said: &[Finding]) -> bool {
    let parent = |key: &str| key.rfind('.').map_or(0, |dot| dot + 1);
    let key = &finding.place.key;
    let meant = format!("did you mean '{}'?", last_key(key));
    finding.code == "missing-key"
        && said.iter().any(|f| {
            let other = &f.place.key;
            let beside = other[..parent(other)] == key[..parent(key)];
            f.code == "unknown-key" && beside && f.hint == meant
        })
}
