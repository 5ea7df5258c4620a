//! Findings as JSON.

use crate::diagnostics::{Finding, Remedy, Verdict};
use serde_json::{Value, json};

/// A file with what was found about it.
#[derive(Clone, Copy, Debug)]
pub struct Report<'a> {
    /// The file as it was named.
    pub path: &'a str,
    /// Its text.
    pub source: &'a str,
    /// What was found.
    pub findings: &'a [Finding],
    /// Cautions that stand over all of it, one sentence each.
    pub cautions: &'a [String],
}

/// Findings about a parameter file and the trade files read before it as one JSON object: the parameter file, which is the
/// last report, the gravest verdict, and every finding with its file, its place and the offending source line.
pub fn findings_json(reports: &[Report]) -> String {
    let worst = reports.iter().flat_map(|r| r.findings).map(|f| f.verdict);
    let worst = worst.max();
    let list: Vec<Value> = reports.iter().flat_map(of).collect();
    let object = json!({
        "file": reports.last().map(|r| r.path),
        "verdict": worst.unwrap_or(Verdict::Pass).word(),
        "cautions": reports.last().map_or(&[][..], |r| r.cautions),
        "findings": list,
    });
    format!("{object:#}\n")
}

fn of(report: &Report) -> Vec<Value> {
    let lines: Vec<&str> = report.source.lines().collect();
    let findings = report.findings.iter();
    findings.map(|f| one(report.path, &lines, f)).collect()
}

fn one(path: &str, lines: &[&str], finding: &Finding) -> Value {
    let place = &finding.place;
    let line = place.line.checked_sub(1).and_then(|n| lines.get(n));
    let shown: String = line
        .map(|l| l.chars().take(400).collect())
        .unwrap_or_default();
    json!({
        "file": path,
        "code": finding.code,
        "verdict": finding.verdict.word(),
        "subject": finding.subject,
        "key": place.key,
        "line": place.line,
        "column": place.column,
        "length": place.length,
        "source_line": shown,
        "found": finding.found,
        "limit": finding.limit,
        "source": finding.source,
        "hint": finding.hint,
        "remedy": finding.remedy.as_ref().map(remedy),
    })
}

/// A change that cures; what it breaks is there only where it breaks something.
fn remedy(r: &Remedy) -> Value {
    let mut all = json!({
        "key": r.key,
        "now": r.now,
        "write": r.write,
        "then": r.then.word(),
    });
    if let Some(code) = r.breaks {
        all["breaks"] = json!(code);
    }
    all
}
