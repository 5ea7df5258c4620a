//! The checks of a parameter file: everything there is to say about it without building.

use super::{OutputFile, OutputGroup, TradeData, check, takeoff};
use crate::design::{self, Change, Design};
use crate::diagnostics::{Finding, Verdict, in_order};
use crate::plan::{self, Plan};
use crate::rules::{self, Family, Rule, Subject, WhatIf};
use crate::write::{self, Report};
use std::collections::{BTreeMap, BTreeSet};

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
    let mut tried = Tried {
        text,
        trade,
        before: rules::check(&Subject::new(&plan)),
        refused: refused(&plan.design),
        broken: BTreeMap::new(),
    };
    let before = tried.before.clone();
    let seek = |mut finding: Finding| {
        if let Some(rule) = rules::rule(finding.code).filter(|_| finding.verdict == Verdict::Fail) {
            finding.remedy = rules::remedy(rule, &finding, &before, &plan.design, &mut tried);
        }
        finding
    };
    findings.into_iter().map(seek).collect()
}

/// How much of what a design says is refused.
fn refused(design: &Design) -> usize {
    let findings = design.findings.iter();
    findings.filter(|f| f.verdict == Verdict::Fail).count()
}

/// A file that is tried with one key written otherwise.
struct Tried<'a> {
    text: &'a str,
    trade: &'a TradeData,
    /// What the rules say of the file as it is.
    before: Vec<Finding>,
    /// How much of it is refused.
    refused: usize,
    /// What else breaks, by key and value.
    broken: BTreeMap<(String, String), Option<&'static str>>,
}

impl Tried<'_> {
    fn plan(&self, key: &str, value: &str) -> Option<Plan> {
        let change = [Change::write(key, value)];
        let design = design::from_text_changed(self.text, self.trade, &change).ok()?;
        if refused(&design) > self.refused {
            return None;
        }
        plan::lay_out(design).ok()
    }

    fn newly_failing(&self, key: &str, value: &str) -> Option<&'static str> {
        let plan = self.plan(key, value)?;
        let after = rules::check(&Subject::new(&plan));
        let failing = |f: &&Finding| f.verdict == Verdict::Fail;
        let known: BTreeSet<_> = self.before.iter().filter(failing).map(|f| f.code).collect();
        let mut now = after.iter().filter(failing).map(|f| f.code);
        now.find(|code| !known.contains(code))
    }
}

impl WhatIf for Tried<'_> {
    fn ask(&mut self, rule: &Rule, key: &str, value: &str) -> Option<Vec<Finding>> {
        let plan = self.plan(key, value)?;
        Some(rules::ask(rule, &Subject::new(&plan)))
    }

    fn breaks(&mut self, key: &str, value: &str) -> Option<&'static str> {
        let tried = (key.to_owned(), value.to_owned());
        if let Some(known) = self.broken.get(&tried) {
            return *known;
        }
        let broken = self.newly_failing(key, value);
        self.broken.insert(tried, broken);
        broken
    }
}

/// The cautions that stand over what was found: one for each family that had something to say, families with the same one
/// together.
pub fn cautions(findings: &[Finding]) -> Vec<String> {
    let notable = findings.iter().filter(|f| f.verdict != Verdict::Pass);
    let spoken = notable
        .filter_map(|f| rules::rule(f.code))
        .map(|r| r.family);
    spell_cautions(spoken.collect())
}

/// What the checks found wrong, in a sentence for the sheets; `None` when nothing fails.
pub(super) fn failures(findings: &[Finding]) -> Option<String> {
    let failing = || findings.iter().filter(|f| f.verdict >= Verdict::Fail);
    let families: BTreeSet<Family> = failing()
        .filter_map(|f| rules::rule(f.code))
        .map(|r| r.family)
        .collect();
    let names: Vec<&str> = families.iter().map(|f| f.name()).collect();
    let of = if names.is_empty() {
        String::new()
    } else {
        format!(" ({})", names.join(", "))
    };
    match failing().count() {
        0 => None,
        1 => Some(format!(
            "The checks found 1 failure in this design{of}: do not build before it is mended."
        )),
        count => Some(format!(
            "The checks found {count} failures in this design{of}: do not build before they are mended."
        )),
    }
}

/// The cautions of all families, whatever was found: those that the drawing set letters.
pub(super) fn standing_cautions() -> Vec<String> {
    spell_cautions(Family::ALL.into_iter().collect())
}

fn spell_cautions(spoken: BTreeSet<Family>) -> Vec<String> {
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
