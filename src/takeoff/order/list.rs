//! The order as a whole.

use super::line::Purchase;
use super::share::divide;
use crate::design::Design;
use crate::units::{Currency, Money};

/// What to buy, grouped by shop.
///
/// Invariant: `subtotal` is the sum of the lines that have a price; `per_run` adds up to `total`.
#[derive(Clone, Debug, PartialEq)]
pub struct Order {
    /// The one currency of all prices.
    pub currency: Currency,
    /// The lines, shop by shop in the order of their names; lines of no known shop come last.
    pub lines: Vec<Purchase>,
    /// All priced lines together.
    pub subtotal: Money,
    /// Tax on them.
    pub tax: Money,
    /// With tax.
    pub total: Money,
    /// What each run costs with tax; the last entry is what belongs to no single run.
    pub per_run: Vec<Money>,
}

impl Order {
    /// What the priced lines of each shop come to before tax, in the order of the lines; shops without any are left out.
    pub fn by_shop(&self) -> impl Iterator<Item = (&str, Money)> {
        let lines = self.lines.chunk_by(|a, b| a.shop == b.shop);
        lines.filter_map(|lines| {
            let costs: Vec<Money> = lines.iter().filter_map(Purchase::cost).collect();
            let shop = lines.first()?.shop.as_str();
            (!costs.is_empty()).then(|| (shop, costs.into_iter().sum()))
        })
    }

    /// Lines that have no price: they are in no total.
    pub fn unpriced(&self) -> impl Iterator<Item = &Purchase> {
        self.lines.iter().filter(|line| line.cost().is_none())
    }

    /// True when some price is an invented example.
    pub fn has_examples(&self) -> bool {
        self.lines
            .iter()
            .any(|line| line.example && line.price.is_some())
    }
}

/// Puts purchases in order and adds them up.
pub fn order(design: &Design, mut lines: Vec<Purchase>) -> Order {
    lines.sort_by(|a, b| (a.shop.is_empty(), &a.shop).cmp(&(b.shop.is_empty(), &b.shop)));
    let mut per_run = vec![Money::ZERO; design.runs.len() + 1];
    for line in &lines {
        let parts = divide(line.cost().unwrap_or_default(), line.shares.by_run());
        for (run, part) in per_run.iter_mut().zip(parts) {
            *run += part;
        }
    }
    let subtotal: Money = lines.iter().filter_map(Purchase::cost).sum();
    let tax = subtotal.share(design.buying.tax);
    let weights: Vec<f64> = per_run.iter().map(|m| m.in_cents() as f64).collect();
    for (run, part) in per_run.iter_mut().zip(divide(tax, &weights)) {
        *run += part;
    }
    Order {
        currency: design.buying.currency,
        lines,
        subtotal,
        tax,
        total: subtotal + tax,
        per_run,
    }
}
