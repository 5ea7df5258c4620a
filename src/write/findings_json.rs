//! Findings as JSON.

use crate::diagnostics::{Finding, Verdict};
use serde_json::{Value, json};

/// Findings about a parameter file as one JSON object: the file, the gravest verdict, and every finding with its
/// place and the offending source line.
pub fn findings_json(path: &str, source: &str, findings: &[Finding]) -> String {
    let lines: Vec<&str> = source.lines().collect();
    let worst = findings.iter().map(|f| f.verdict).max();
    let list: Vec<Value> = findings.iter().map(|f| one(&lines, f)).collect();
    let object = json!({
        "file": path,
        "verdict": worst.unwrap_or(Verdict::Pass).word(),
        "findings": list,
    });
    format!("{object:#}\n")
}

fn one(lines: &[&str], finding: &Finding) -> Value {
    let place = &finding.place;
    let line = place.line.checked_sub(1).and_then(|n| lines.get(n));
    let shown: String = line
        .map(|l| l.chars().take(400).collect())
        .unwrap_or_default();
    json!({
        "code": finding.code,
        "verdict": finding.verdict.word(),
        "key": place.key,
        "line": place.line,
        "column": place.column,
        "length": place.length,
        "source_line": shown,
        "found": finding.found,
        "limit": finding.limit,
        "source": finding.source,
        "hint": finding.hint,
    })
}
