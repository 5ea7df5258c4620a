//! The whole file resolved.

use super::gather::{Gather, last_key};
use super::{counter, openings, project, runs, things, trade};
use crate::catalog::Supplies;
use crate::design::{Buying, Design};
use crate::diagnostics::{Finding, Place, in_order};
use crate::parameters::{File, Units, read};
use crate::units::Notation;

/// Fills every default of a file and follows every reference.
///
/// # Errors
/// Everything in the file that makes no sense, in the order of the file.
pub fn resolve(file: &File) -> Result<Design, Vec<Finding>> {
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
    let counter = counter::counter(g, &file.counter);
    let tile_band = counter::tile_band(g, &file.tile_band, &runs);
    let printing = project::printing(g, &file.printing);
    match trade {
        Some(trade) if gather.findings.is_empty() => Ok(Design {
            project,
            trade,
            levels,
            runs,
            appliances,
            openings,
            counter,
            tile_band,
            printing,
            buying: Buying::usual(notation == Notation::Metric),
            supplies: Supplies::default(),
            findings: Vec::new(),
        }),
        _ => Err(in_order(gather.findings)),
    }
}

/// Reads and resolves a parameter file.
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
    let reading = read(text);
    if !reading.is_usable {
        return Err(reading.findings);
    }
    match resolve(&reading.file) {
        Ok(design) if reading.findings.is_empty() => Ok(design),
        Ok(_) => Err(in_order(reading.findings)),
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
