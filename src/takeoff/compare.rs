//! What differs between two designs.

use super::{Amount, Takeoff};
use crate::catalog::Need;
use crate::diagnostics::Verdict;
use crate::plan::Plan;
use crate::table::{Cell, Column, Table};
use crate::units::{Money, Notation};
use std::collections::{BTreeMap, BTreeSet};

/// A figure of a takeoff that can be held against the same figure of another.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Figure {
    Amount(Amount),
    Money(Money),
}

/// Group and name of a figure; groups stand in this order.
type Key = (u8, String);

const GROUPS: [&str; 4] = ["quantity", "weight", "to buy", "money"];

/// Quantities, weights, purchases, money and findings that differ between two designs, a row each; no rows when nothing does.
///
/// Amounts are spelt in the units of the first design.
pub fn differences(first: (&Plan, &Takeoff), second: (&Plan, &Takeoff)) -> Table {
    let notation = first.0.design.project.units;
    let (before, after) = (figures(first.1), figures(second.1));
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

/// What is said of only one of the two; a finding is the same wherever it stands in its file.
fn finding_rows(first: (&Plan, &Takeoff), second: (&Plan, &Takeoff)) -> Vec<Vec<Cell>> {
    let said = |(plan, takeoff): (&Plan, &Takeoff)| -> BTreeMap<(&'static str, String), Verdict> {
        let all = plan.design.findings.iter().chain(&takeoff.findings);
        all.map(|f| ((f.code, f.found.clone()), f.verdict))
            .collect()
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
fn figures(takeoff: &Takeoff) -> BTreeMap<Key, Figure> {
    let mut found: BTreeMap<Key, Figure> = BTreeMap::new();
    for quantity in &takeoff.quantities {
        let group = u8::from(matches!(quantity.amount, Amount::Mass(_)));
        let entry = found.entry((group, quantity.item.clone()));
        let entry = entry.or_insert(Figure::Amount(quantity.amount.resized(0.0)));
        if let Figure::Amount(sum) = entry {
            *sum = sum.resized(sum.size() + quantity.amount.size());
        }
    }
    for line in &takeoff.order.lines {
        let name = match &line.need {
            Need::Thing(name) => name.clone(),
            _ => line.name.clone(),
        };
        let count = Figure::Amount(Amount::Count(line.count.unwrap_or(0)));
        found.insert((2, name), count);
    }
    let order = &takeoff.order;
    let money = [
        ("before tax", order.subtotal),
        ("tax", order.tax),
        ("total", order.total),
    ];
    found.extend(money.map(|(name, amount)| {
        let name = format!("{name}, {}", order.currency);
        ((3, name), Figure::Money(amount))
    }));
    found
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
    }
}

/// The second less the first with its sign, from the exact figures.
fn change(notation: Notation, before: Figure, after: Figure) -> String {
    let signed = |less: bool, text: String| format!("{}{text}", if less { "-" } else { "+" });
    match (before, after) {
        (Figure::Money(a), Figure::Money(b)) => {
            signed(b < a, Money::cents((b - a).in_cents().abs()).to_string())
        }
        (Figure::Amount(a), Figure::Amount(b)) => {
            let change = b.size() - a.size();
            signed(change < 0.0, a.resized(change.abs()).spell(notation))
        }
        _ => String::new(),
    }
}
