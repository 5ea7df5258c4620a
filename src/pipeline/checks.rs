//! The checks of a parameter file: everything there is to say about it without building.

use super::{OutputFile, OutputGroup, TradeData, check, takeoff};
use crate::design::{self, Change};
use crate::diagnostics::{Finding, Verdict, in_order};
use crate::plan::{self, Plan};
use crate::rules::{self, Family, Subject};
use crate::write::{self, Report};
use std::collections::BTreeSet;

/// Everything that was found about a parameter file: by its design, its takeoff and the rules.
///
/// # Errors
/// Everything that keeps the file from being built, each with its place.
pub fn examine(text: &str, trade: &TradeData) -> Result<Vec<Finding>, Vec<Finding>> {
    let plan = check(text, trade)?;
    let subject = Subject::new(&plan);
    let takeoff = crate::takeoff::reckon(&plan, subject.assembly());
    let reckoned = takeoff::findings(&plan, &takeoff);
    Ok(in_order([reckoned, rules::check(&subject)].concat()))
}

/// The answers of the rules about a plan.
pub(super) fn findings(plan: &Plan) -> Vec<Finding> {
    rules::check(&Subject::new(plan))
}

/// The same findings, each failure of a rule with the smallest change of one key that turns it, where there is one. Found by
/// asking the rule again with the key written otherwise.
pub fn with_remedies(text: &str, trade: &TradeData, findings: Vec<Finding>) -> Vec<Finding> {
    let Ok(plan) = check(text, trade) else {
        return findings;
    };
    let seek = |mut finding: Finding| {
        if let Some(rule) = rules::rule(finding.code).filter(|_| finding.verdict == Verdict::Fail) {
            let mut ask = |key: &str, value: &str| {
                let change = [Change::write(key, value)];
                let design = design::from_text_changed(text, trade, &change).ok()?;
                let plan = plan::lay_out(design).ok()?;
                Some(rules::ask(rule, &Subject::new(&plan)))
            };
            finding.remedy = rules::remedy(rule, &finding, &plan.design, &mut ask);
        }
        finding
    };
    findings.into_iter().map(seek).collect()
}

/// The cautions that stand over what was found: one for each family that had something to say, families with the same one
/// together.
pub fn cautions(findings: &[Finding]) -> Vec<String> {
    let notable = findings.iter().filter(|f| f.verdict != Verdict::Pass);
    let spoken: BTreeSet<Family> = notable
        .filter_map(|f| rules::rule(f.code))
        .map(|r| r.family)
        .collect();
    let mut said: Vec<(String, &'static str)> = Vec::new();
    for family in spoken {
        match said.iter_mut().find(|s| s.1 == family.caution()) {
            Some((names, _)) => *names = format!("{names}; {}", family.name()),
            None => said.push((family.name().to_owned(), family.caution())),
        }
    }
    let line = |(names, caution): (String, &str)| format!("{names}: {caution}");
    said.into_iter().map(line).collect()
}

/// The documentation of a rule; `None` when no rule has that code.
pub fn explain(code: &str) -> Option<String> {
    rules::rule(code).map(rules::explain)
}

/// All codes with what they ask, by family.
pub fn rule_list() -> String {
    rules::list()
}

/// The page that documents every rule.
pub fn rule_page() -> String {
    rules::page()
}

/// The codes of all rules.
pub fn codes() -> impl Iterator<Item = &'static str> + Clone {
    rules::rules().map(|r| r.code)
}

/// The checks' folder: everything that was found, passes included, for people and for programs.
pub(super) fn outputs(name: &str, text: &str, findings: &[Finding]) -> OutputGroup {
    let cautions = cautions(findings);
    let report = Report {
        path: name,
        source: text,
        findings,
        cautions: &cautions,
    };
    let file = |path: &str, text: String| OutputFile {
        path: path.to_owned(),
        bytes: text.into_bytes(),
    };
    OutputGroup {
        folder: "checks",
        about: "what fails, what to be careful about, what could not be checked, and what holds",
        files: vec![
            file("checks/findings.txt", write::findings_text(&report, false)),
            file("checks/findings.json", write::findings_json(&[report])),
        ],
    }
}
