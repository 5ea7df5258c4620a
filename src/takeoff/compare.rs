//! What differs between two designs.

use super::{Amount, Takeoff};
use crate::diagnostics::{Finding, Verdict};
use crate::plan::Plan;
use crate::table::{Cell, Column, Table};
use crate::units::{Money, Notation};
use std::collections::{BTreeMap, BTreeSet};

/// A figure of a takeoff that can be held against the same figure of another.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Figure {
    Amount(Amount),
    Money(Money),
    /// Needed, but nobody knows how many units.
    Unknown,
}

/// Group and name of a figure; groups stand in this order.
type Key = (u8, String);

const GROUPS: [&str; 4] = ["quantity", "weight", "to buy", "money"];

/// One of the two designs: its plan, its takeoff, and what the checks said of it.
#[derive(Clone, Copy, Debug)]
pub struct Compared<'a> {
    /// The plan.
    pub plan: &'a Plan,
    /// The takeoff.
    pub takeoff: &'a Takeoff,
    /// What the checks said.
    pub checks: &'a [Finding],
}

/// Quantities, weights, purchases, money and findings that differ between two designs, a row each; no rows when nothing does.
///
/// Amounts are spelt in the units of the first design.
pub fn differences(first: Compared, second: Compared) -> Table {
    let notation = first.plan.design.project.units;
    let of = |one: Compared| figures((one.plan, one.takeoff));
    let (before, after) = (of(first), of(second));
    let keys: BTreeSet<&Key> = before.keys().chain(after.keys()).collect();
    let rows = keys
        .into_iter()
        .filter_map(|key| row(notation, key, before.get(key), after.get(key)));
    let rows = rows.chain(finding_rows(first, second));
    Table {
        name: "differences".to_owned(),
        title: "What differs".to_owned(),
        columns: ["group", "what", "first", "second", "change"]
            .map(Column::plain)
            .to_vec(),
        rows: rows.collect(),
    }
}

/// What is said of only one of the two, wherever it stands in its file. A check is compared by its gravest verdict on each
/// subject, since the numbers in its words differ as soon as anything does; what passes in one need not be said of the other.
fn finding_rows(first: Compared, second: Compared) -> Vec<Vec<Cell>> {
    let said = |one: Compared| {
        let mut said: BTreeMap<(&'static str, String), Verdict> = BTreeMap::new();
        let reckoned = one.plan.design.findings.iter().chain(&one.takeoff.findings);
        said.extend(reckoned.map(|f| ((f.code, f.found.clone()), f.verdict)));
        for check in one.checks.iter().filter(|f| f.verdict > Verdict::Pass) {
            let subject = match check.subject.as_str() {
                "" => check.code.to_owned(),
                subject => format!("{}: {subject}", check.code),
            };
            let known = said.entry((check.code, subject)).or_insert(check.verdict);
            *known = check.verdict.max(*known);
        }
        said
    };
    let (before, after) = (said(first), said(second));
    let keys: BTreeSet<_> = before.keys().chain(after.keys()).collect();
    let word = |verdict: Option<&Verdict>| verdict.map_or("none", |v| v.word());
    let rows = keys.into_iter().filter_map(|key| {
        let (first, second) = (before.get(key), after.get(key));
        let change = match (first, second) {
            (None, _) => "new",
            (_, None) => "gone",
            (Some(a), Some(b)) if a == b => return None,
            _ => "other verdict",
        };
        Some(
            ["finding", &key.1, word(first), word(second), change]
                .map(Cell::text)
                .to_vec(),
        )
    });
    rows.collect()
}

/// Every figure under its name, the places of one item added up.
fn figures((plan, takeoff): (&Plan, &Takeoff)) -> BTreeMap<Key, Figure> {
    let mut found: BTreeMap<Key, Figure> = BTreeMap::new();
    let mut add = |group: u8, name: String, amount: Option<Amount>| {
        let known = found.entry((group, name));
        let sum = known
            .or_insert_with(|| amount.map_or(Figure::Unknown, |a| Figure::Amount(a.resized(0.0))));
        *sum = match (*sum, amount) {
            (Figure::Amount(sum), Some(more)) => {
                Figure::Amount(sum.resized(sum.size() + more.size()))
            }
            _ => Figure::Unknown,
        };
    };
    for quantity in &takeoff.quantities {
        let group = u8::from(matches!(quantity.amount, Amount::Mass(_)));
        add(group, quantity.item.clone(), Some(quantity.amount));
    }
    for line in &takeoff.order.lines {
        add(2, line.name.clone(), line.count.map(Amount::Count));
    }
    let unpriced = takeoff.order.unpriced().count() as u32;
    add(
        3,
        "lines without a price".to_owned(),
        Some(Amount::Count(unpriced)),
    );
    found.extend(money(plan, takeoff));
    found
}

/// Sums, and what each run takes of the total.
fn money(plan: &Plan, takeoff: &Takeoff) -> Vec<(Key, Figure)> {
    let order = &takeoff.order;
    let sums = [
        ("before tax", order.subtotal),
        ("tax", order.tax),
        ("total", order.total),
    ]
    .map(|(name, amount)| (name.to_owned(), amount));
    let runs = plan.design.runs.iter().zip(&order.per_run);
    let runs = runs.map(|(run, amount)| (format!("{} run, with tax", run.name.value), *amount));
    sums.into_iter()
        .chain(runs)
        .map(|(name, amount)| {
            let name = format!("{name}, {}", order.currency);
            ((3, name), Figure::Money(amount))
        })
        .collect()
}

fn row(
    notation: Notation,
    (group, name): &Key,
    before: Option<&Figure>,
    after: Option<&Figure>,
) -> Option<Vec<Cell>> {
    let spelt = |figure: Option<&Figure>| figure.map_or("none".to_owned(), |f| spell(notation, *f));
    let (first, second) = (spelt(before), spelt(after));
    if first == second {
        return None;
    }
    let change = match (before, after) {
        (Some(a), Some(b)) => change(notation, *a, *b),
        (None, Some(_)) => "new".to_owned(),
        _ => "gone".to_owned(),
    };
    let group = GROUPS.get(usize::from(*group)).copied().unwrap_or("");
    Some(
        [group, name, &first, &second, &change]
            .map(Cell::text)
            .to_vec(),
    )
}

fn spell(notation: Notation, figure: Figure) -> String {
    match figure {
        Figure::Amount(amount) => amount.spell(notation),
        Figure::Money(money) => money.to_string(),
        Figure::Unknown => "not known".to_owned(),
    }
}

/// The second less the first with its sign, of the figures as they are spelt.
fn change(notation: Notation, before: Figure, after: Figure) -> String {
    match (before, after) {
        (Figure::Money(a), Figure::Money(b)) => {
            let sign = if b < a { "-" } else { "+" };
            format!("{sign}{}", Money::cents((b - a).in_cents().abs()))
        }
        (Figure::Amount(a), Figure::Amount(b)) => {
            let ((a, decimals, unit), (b, ..)) = (a.measure(notation), b.measure(notation));
            let decimals = usize::from(decimals);
            let spelt = |x: f64| format!("{x:.decimals$}").parse::<f64>().unwrap_or(x);
            let change = format!("{:+.decimals$} {unit}", spelt(b) - spelt(a));
            change.trim_end().to_owned()
        }
        _ => "other".to_owned(),
    }
}
