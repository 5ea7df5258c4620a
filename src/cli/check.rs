//! `check`: everything that can be said about a parameter file without building.

use super::args::{CheckArgs, Format};
use super::outcome::{Outcome, Trouble};
use super::{console, input, trade};
use crate::pipeline;
use crate::write::{Report, findings_json, findings_text};

pub(super) fn run(args: &CheckArgs) -> Result<Outcome, Trouble> {
    let trade = trade::read(&args.trade)?;
    let input = input::read(&args.file)?;
    let reckoned = pipeline::reckon(&input.text, &trade.data);
    let findings = reckoned.map_or_else(|findings| findings, |reckoned| reckoned.findings());
    let mut reports: Vec<Report> = trade.reports().collect();
    reports.push(input.report(&findings));
    console::out(&match args.format {
        Format::Json => findings_json(&reports),
        Format::Text => text(&reports),
    });
    Ok(trade.outcome(&findings))
}

fn text(reports: &[Report]) -> String {
    let coloured = console::colours(&std::io::stdout());
    let shown = reports.iter().enumerate().map(|(i, r)| {
        if r.findings.is_empty() && i + 1 == reports.len() {
            return format!("{}: nothing wrong\n", r.path);
        }
        findings_text(r.path, r.source, r.findings, coloured)
    });
    shown.collect()
}
