//! `check`: everything that can be said about a parameter file without building.

use super::args::{CheckArgs, Format};
use super::outcome::{Outcome, Trouble};
use super::{console, input, trade};
use crate::diagnostics::Verdict;
use crate::pipeline;
use crate::write::{Report, findings_json, findings_text};

pub(super) fn run(args: &CheckArgs) -> Result<Outcome, Trouble> {
    let trade = trade::read(&args.trade)?;
    let input = input::read(&args.file)?;
    let examined = pipeline::examine(&input.text, &trade.data);
    let mut findings = examined.unwrap_or_else(|findings| findings);
    if args.fix_hints {
        findings = pipeline::with_remedies(&input.text, &trade.data, findings);
    }
    let outcome = trade.outcome(&findings);
    let passes = findings
        .iter()
        .filter(|f| f.verdict == Verdict::Pass)
        .count();
    if args.format == Format::Text && !args.all {
        findings.retain(|f| f.verdict > Verdict::Pass);
    }
    let cautions = pipeline::cautions(&findings);
    let mut reports: Vec<Report> = trade.reports().collect();
    reports.push(input.report(&findings, &cautions));
    console::out(&match args.format {
        Format::Json => findings_json(&reports),
        Format::Text => text(&reports, passes),
    });
    Ok(outcome)
}

fn text(reports: &[Report], passes: usize) -> String {
    let coloured = console::colours(&std::io::stdout());
    let shown = reports.iter().enumerate().map(|(i, r)| {
        if r.findings.is_empty() && i + 1 == reports.len() {
            return format!("{}: nothing wrong, {passes} pass\n", r.path);
        }
        findings_text(r, coloured)
    });
    shown.collect()
}
