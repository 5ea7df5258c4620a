//! Looking for the smallest change of one key that turns a failure to a pass, by asking the rule again.

use super::Rule;
use crate::design::{Design, Lever, Turns, levers};
use crate::diagnostics::{Finding, Remedy, Verdict};
use crate::units::Notation;
use std::collections::BTreeMap;

/// A file with one key written otherwise, asked.
pub trait WhatIf {
    /// The answers of the rule; `None` when the file cannot be built so, or a value is none that it may have.
    fn ask(&mut self, rule: &Rule, key: &str, value: &str) -> Option<Vec<Finding>>;

    /// The code of a check that holds for the file as it is and fails then.
    fn breaks(&mut self, key: &str, value: &str) -> Option<&'static str>;
}

/// The smallest change of one of the rule's levers that turns a failure of its to a pass, or to a caution where it never
/// passes; `None` when no single one does. One that makes another answer of the same rule fail is none. Changes are compared
/// by their share of the value they change; one that breaks no other check goes before all that do. `before` is everything
/// that was found about the file as it is.
pub fn remedy(
    rule: &Rule,
    finding: &Finding,
    before: &[Finding],
    design: &Design,
    what_if: &mut dyn WhatIf,
) -> Option<Remedy> {
    let notation = design.project.units;
    let failing: Vec<_> = before.iter().filter(|f| fails(f, rule)).map(whom).collect();
    let mut found: Vec<(f64, Remedy)> = Vec::new();
    for pattern in rule.levers {
        for lever in own(levers(design, pattern), finding) {
            let mut ask = |key: &str, value: &str| {
                let answers = what_if.ask(rule, key, value)?;
                let breaks = |f: &Finding| fails(f, rule) && !failing.contains(&whom(f));
                (!answers.iter().any(breaks)).then_some(answers)
            };
            let Some((then, change, value)) =
                Trial::new(&lever, finding, notation, &mut ask).search()
            else {
                continue;
            };
            let remedy = Remedy {
                key: lever.key.clone(),
                now: lever.write(lever.now, notation),
                write: lever.write(value, notation),
                then,
                breaks: None,
            };
            found.push((change, remedy));
        }
    }
    found.sort_by(|a, b| a.1.then.cmp(&b.1.then).then(a.0.total_cmp(&b.0)));
    let mut all: Vec<Remedy> = found.into_iter().map(|f| f.1).collect();
    for remedy in &mut all {
        remedy.breaks = what_if.breaks(&remedy.key, &remedy.write);
        if remedy.breaks.is_none() {
            return Some(remedy.clone());
        }
    }
    all.into_iter().next()
}

fn fails(finding: &Finding, rule: &Rule) -> bool {
    finding.code == rule.code && finding.verdict == Verdict::Fail
}

/// Whom an answer is about: its subject, else its place.
fn whom(finding: &Finding) -> String {
    if finding.subject.is_empty() {
        finding.place.key.clone()
    } else {
        finding.subject.clone()
    }
}

/// Of the levers of a list, only that of the entry the finding is about, where it is about one.
fn own(all: Vec<Lever>, finding: &Finding) -> Vec<Lever> {
    let entry = |key: &str| key.split_once(']').map(|(head, _)| format!("{head}]"));
    match entry(&finding.place.key) {
        Some(mine) if all.iter().any(|l| entry(&l.key).as_ref() == Some(&mine)) => {
            let mut all = all;
            all.retain(|l| entry(&l.key).as_ref() == Some(&mine));
            all
        }
        _ => all,
    }
}

/// The answers for a key and its value.
type Ask<'a> = dyn FnMut(&str, &str) -> Option<Vec<Finding>> + 'a;

/// One lever being tried for one failure.
struct Trial<'t, 'a> {
    lever: &'t Lever,
    finding: &'t Finding,
    notation: Notation,
    ask: &'t mut Ask<'a>,
    /// What was said at so many steps from the value now.
    said: BTreeMap<i64, Option<Verdict>>,
}

/// No lever is tried farther than this many steps: some five feet.
const FARTHEST: i64 = 1024;

impl<'t, 'a> Trial<'t, 'a> {
    fn new(
        lever: &'t Lever,
        finding: &'t Finding,
        notation: Notation,
        ask: &'t mut Ask<'a>,
    ) -> Self {
        Self {
            lever,
            finding,
            notation,
            ask,
            said: BTreeMap::new(),
        }
    }

    /// The verdict after the smallest change that helps, how large that is as a share of the value, and the value.
    fn search(mut self) -> Option<(Verdict, f64, f64)> {
        let up = self.towards(1);
        let down = self.towards(-1);
        let mut found: Vec<(Verdict, i64)> = up.into_iter().chain(down).collect();
        found.sort_by_key(|(verdict, steps)| (*verdict, steps.abs(), *steps));
        let (then, steps) = *found.first()?;
        let value = self.value(steps);
        let change = (value - self.lever.now).abs() / self.lever.now.abs().max(self.step());
        Some((then, change, value))
    }

    fn step(&self) -> f64 {
        self.lever.step(self.notation)
    }

    /// The value so many whole steps away; a value off the grid of steps is first put on it.
    fn value(&self, steps: i64) -> f64 {
        let step = self.step();
        ((self.lever.now / step).round() + steps as f64) * step
    }

    /// The nearest step in one direction that passes, else the nearest that only cautions.
    fn towards(&mut self, sign: i64) -> Option<(Verdict, i64)> {
        let mut far = 1;
        let mut failing = 0;
        let mut caution = None;
        while far <= self.farthest() {
            match self.at(sign * far) {
                Some(Verdict::Pass) => {
                    return Some((
                        Verdict::Pass,
                        sign * self.nearest(sign, failing, far, Verdict::Pass),
                    ));
                }
                Some(Verdict::Caution) => {
                    caution.get_or_insert((failing, far));
                }
                _ => {}
            }
            failing = far;
            far *= 2;
        }
        let (failing, far) = caution?;
        Some((
            Verdict::Caution,
            sign * self.nearest(sign, failing, far, Verdict::Caution),
        ))
    }

    fn farthest(&self) -> i64 {
        match self.lever.turns {
            Turns::Choice(_) => 8,
            Turns::Share | Turns::Count | Turns::Volume => 128,
            Turns::Length | Turns::Station(_) => FARTHEST,
        }
    }

    /// Halves the way between a step that does not help and one that does.
    fn nearest(&mut self, sign: i64, failing: i64, helping: i64, wanted: Verdict) -> i64 {
        let (mut low, mut high) = (failing, helping);
        while high - low > 1 {
            let middle = i64::midpoint(low, high);
            if self.at(sign * middle).is_some_and(|v| v <= wanted) {
                high = middle;
            } else {
                low = middle;
            }
        }
        high
    }

    /// What the rule then says about the same subject; `None` when it fails still, or the file cannot be built so.
    fn at(&mut self, steps: i64) -> Option<Verdict> {
        if let Some(known) = self.said.get(&steps) {
            return *known;
        }
        let said = self.say(steps);
        self.said.insert(steps, said);
        said
    }

    fn say(&mut self, steps: i64) -> Option<Verdict> {
        let value = self.value(steps);
        if let Turns::Choice(words) = self.lever.turns {
            words.get(usize::try_from(value.round() as i64).ok()?)?;
        } else if value < 0.0 {
            return None;
        }
        let text = self.lever.write(value, self.notation);
        let answers = (self.ask)(&self.lever.key, &text)?;
        let mine = whom(self.finding);
        // One that leaves it unchecked is no cure.
        let worst = answers
            .iter()
            .filter(|f| whom(f) == mine)
            .map(|f| f.verdict)
            .max()?;
        let is_cured = matches!(worst, Verdict::Pass | Verdict::Caution);
        is_cured.then_some(worst)
    }
}
