//! What trade files say, before a design chooses its currency.

use super::{Supplies, Supply};
use crate::units::{Currency, Notation};

/// One entry of a trade file.
#[derive(Clone, Debug, PartialEq)]
pub struct TradeEntry {
    /// The same thing for each need that it serves; all of one name.
    pub supplies: Vec<Supply>,
    /// The currency of its price, where it has one.
    pub currency: Option<Currency>,
    /// The units of the parameter files that it is for; `None` for all.
    pub units: Option<Notation>,
}

/// What trade files say, in the order they say it.
///
/// Invariant: names are unique, and no entry is empty.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct TradeData {
    entries: Vec<TradeEntry>,
}

impl TradeEntry {
    /// What the shop calls it.
    pub fn name(&self) -> &str {
        self.supplies.first().map_or("", |s| &s.name)
    }
}

impl TradeData {
    /// Adds an entry; one of the same name is replaced where it stands.
    pub fn put(&mut self, entry: TradeEntry) {
        if entry.supplies.is_empty() {
            return;
        }
        let same = |e: &&mut TradeEntry| e.name() == entry.name();
        match self.entries.iter_mut().find(same) {
            Some(known) => *known = entry,
            None => self.entries.push(entry),
        }
    }

    /// All entries.
    pub fn entries(&self) -> &[TradeEntry] {
        &self.entries
    }

    /// Everything for files in these units with the prices in one currency: others are left out. Also says how many were.
    pub fn supplies(&self, units: Notation, currency: Currency) -> (Supplies, usize) {
        let is_foreign = |e: &&TradeEntry| e.currency.is_some_and(|c| c != currency);
        let suits = |e: &&TradeEntry| e.units.is_none_or(|u| u == units);
        let entries = || self.entries.iter().filter(suits);
        let left_out = entries().filter(is_foreign).count();
        let supplies = entries().flat_map(|entry| {
            let foreign = is_foreign(&entry);
            entry.supplies.iter().map(move |supply| {
                let mut supply = supply.clone();
                supply.price = supply.price.filter(|_| !foreign);
                supply
            })
        });
        (supplies.collect(), left_out)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalog::{Form, Need};
    use crate::diagnostics::Place;
    use crate::units::Money;

    fn entry(name: &str, needs: &[Need], code: &str, cents: i64) -> TradeEntry {
        let supply = |need: &Need| Supply {
            name: name.to_owned(),
            need: need.clone(),
            form: Form::Each,
            size: None,
            length: None,
            shop: String::new(),
            price: Some(Money::cents(cents)),
            example: true,
            place: Place::default(),
        };
        TradeEntry {
            supplies: needs.iter().map(supply).collect(),
            currency: Currency::from_code(code),
            units: None,
        }
    }

    #[test]
    fn the_same_name_replaces_for_all_needs_and_keeps_its_turn() {
        let mut data = TradeData::default();
        data.put(entry("a", &[Need::Board, Need::Substrate], "USD", 100));
        data.put(entry("b", &[Need::Board], "USD", 200));
        data.put(entry("a", &[Need::Board], "USD", 300));
        let (supplies, _) = data.supplies(Notation::Metric, Currency::USD);
        let boards = supplies.of(&Need::Board);
        let boards: Vec<_> = boards.map(|s| (&*s.name, s.price)).collect();
        let price = |cents| Some(Money::cents(cents));
        assert_eq!(boards, [("a", price(300)), ("b", price(200))]);
        assert_eq!(supplies.of(&Need::Substrate).count(), 0);
    }

    #[test]
    fn a_price_in_another_currency_is_no_price() {
        let mut data = TradeData::default();
        data.put(entry("a", &[Need::Shim], "USD", 100));
        data.put(entry("b", &[Need::Shim], "EUR", 200));
        let (supplies, left_out) = data.supplies(Notation::Metric, Currency::USD);
        assert_eq!((supplies.all().len(), left_out), (2, 1));
        assert_eq!(supplies.all()[1].price, None);
    }

    #[test]
    fn what_is_for_other_units_is_left_out_without_a_word() {
        let mut data = TradeData::default();
        for (name, units) in [("a", Notation::Imperial), ("b", Notation::Metric)] {
            data.put(TradeEntry {
                units: Some(units),
                ..entry(name, &[Need::Shim], "EUR", 100)
            });
        }
        let (supplies, left_out) = data.supplies(Notation::Metric, Currency::USD);
        assert_eq!((&*supplies.all()[0].name, left_out), ("b", 1));
        assert_eq!(supplies.all().len(), 1);
    }
}
