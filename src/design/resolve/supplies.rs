//! Supplies resolved: an entry that makes no sense is said and left out.

use super::gather::{Gather, Limits};
use super::{serves, sold};
use crate::catalog::{Supplies, Supply, TradeData, TradeEntry};
use crate::design::{Buying, Placed};
use crate::diagnostics::{Finding, Place, Verdict};
use crate::parameters::{self, Dimension, File, Given, PriceText, Size};
use crate::units::{Currency, Length, Money, Notation, parse_money};

/// More entries than this are not one file.
const MOST: usize = 2000;

/// What is known in the file that an entry stands in.
pub(super) struct Context<'f> {
    /// The names of its appliances and openings; `None` in a trade file, which has none.
    pub(super) things: Option<Vec<&'f str>>,
    /// The currency that prices must be in; any in a trade file.
    pub(super) currency: Option<Currency>,
    /// The units of the parameter files that it is for; all when there are none.
    pub(super) units: Option<Notation>,
}

/// The trade data and what the file adds to it, all prices in the file's currency.
pub(super) fn of_design(
    g: &mut Gather,
    file: &File,
    known: &TradeData,
    buying: &Buying,
) -> Supplies {
    let context = Context {
        things: Some(serves::things(g, file)),
        currency: Some(buying.currency),
        units: None,
    };
    let own = entries(g, &file.supplies, &context);
    let mut all;
    let data = if own.is_empty() {
        known
    } else {
        all = known.clone();
        for entry in own {
            all.put(entry);
        }
        &all
    };
    let (supplies, left_out) = data.supplies(g.notation, buying.currency);
    if left_out > 0 {
        let given = file.buying.value().map(|b| b.currency.place());
        say_left_out(g, left_out, buying.currency, &given.unwrap_or_default());
    }
    supplies
}

fn say_left_out(g: &mut Gather, count: usize, currency: Currency, place: &Place) {
    let found = format!("{count} prices of the trade data are not in {currency} and are left out");
    let hint = format!("give prices in {currency} in supplies or in a trade file of your own");
    g.findings.push(Finding {
        verdict: Verdict::Caution,
        ..Finding::error("other-currency", place, found).hint(hint)
    });
}

/// The entries of a list that make sense.
pub(super) fn entries(
    g: &mut Gather,
    list: &Given<Vec<Given<parameters::Supply>>>,
    context: &Context,
) -> Vec<TradeEntry> {
    let count = list.entries().count();
    if count > MOST {
        let hint = format!("spread them over trade files; one file can have {MOST}");
        g.error(
            "too-many",
            &list.place(),
            format!("there are {count} entries"),
            hint,
        );
        return Vec::new();
    }
    let mut names: Vec<Placed<String>> = Vec::new();
    let mut found = Vec::new();
    for (supply, place) in list.entries() {
        let name = name(g, &supply.name, place, &mut names);
        found.extend(entry(g, supply, place, name, context));
    }
    found
}

/// Its name, which must be its own within one file.
fn name(
    g: &mut Gather,
    given: &Given<String>,
    place: &Place,
    earlier: &mut Vec<Placed<String>>,
) -> Option<String> {
    let value = g.needed(given, place, "name")?.trim().to_owned();
    let place = given.place();
    if value.is_empty() {
        g.error(
            "empty-text",
            &place,
            "the name is empty",
            "write what the shop calls it",
        );
        return None;
    }
    if !g.is_plain(&value, &place, 80) {
        return None;
    }
    if let Some(other) = earlier.iter().find(|n| n.value == value) {
        let found = format!("'{value}' is in supplies twice");
        let hint = format!("the other is on line {}; rename one", other.place.line);
        g.fail("same-name", &place, found, hint);
        return None;
    }
    earlier.push(Placed {
        value: value.clone(),
        place,
    });
    Some(value)
}

fn entry(
    g: &mut Gather,
    supply: &parameters::Supply,
    place: &Place,
    name: Option<String>,
    context: &Context,
) -> Option<TradeEntry> {
    g.needed(&supply.serves, place, "for");
    g.needed(&supply.sold, place, "sold");
    let needs = serves::needs(g, &supply.serves, context);
    let form = sold::form(g, &supply.sold);
    let length = length(g, &supply.length);
    let size = size(g, &supply.size);
    let shop = g.text(&supply.shop, "");
    let price = price(g, &supply.price, context);
    let (name, form, size, length) = (name?, form?, size?, length?);
    let needs = serves::sold_so(g, needs, &form, &supply.sold.place());
    let example = supply.example.value() == Some(&true);
    let of = |need| Supply {
        name: name.clone(),
        need,
        form: form.clone(),
        size,
        length,
        shop: shop.clone(),
        price: price.map(|p| p.0),
        example,
        place: place.clone(),
    };
    Some(TradeEntry {
        supplies: needs.into_iter().map(of).collect(),
        currency: price.map(|p| p.1),
        units: context.units,
    })
}

/// Its size where it has one; `None` when that is bad.
#[expect(
    clippy::option_option,
    reason = "a size may be left out, and it may be bad"
)]
fn size(g: &mut Gather, given: &Given<Size>) -> Option<Option<(Length, Length)>> {
    let Given::Yes(size, place) = given else {
        return (!given.is_bad()).then_some(None);
    };
    let limits = Limits(1.0, 10_000.0);
    g.is_there(&size.width, place, "width");
    g.is_there(&size.height, place, "height");
    let width = g.soft_length(&size.width, limits);
    let height = g.soft_length(&size.height, limits);
    Some(Some((width?, height?)))
}

/// Its length where it has one; `None` when that is bad.
#[expect(
    clippy::option_option,
    reason = "a length may be left out, and it may be bad"
)]
fn length(g: &mut Gather, given: &Given<Dimension>) -> Option<Option<Length>> {
    if given.value().is_none() {
        return (!given.is_bad()).then_some(None);
    }
    g.soft_length(given, Limits(1.0, 1000.0)).map(Some)
}

/// Its price; a bad one is put down and left out.
fn price(g: &mut Gather, given: &Given<PriceText>, context: &Context) -> Option<(Money, Currency)> {
    let Placed {
        value: (money, currency),
        place,
    } = g.written(given, parse_money)?;
    if money <= Money::ZERO {
        let found = format!("the price is {money} {currency}");
        let hint = "leave the price out where it is not known; the order list then says so";
        g.fail("out-of-range", &place, found, hint);
        return None;
    }
    if let Some(asked) = context.currency
        && currency != asked
    {
        let found = format!("the price is in {currency}, but buying.currency is {asked}");
        let hint = format!("write it in {asked}, or change the currency in buying");
        g.fail("other-currency", &place, found, hint);
        return None;
    }
    Some((money, currency))
}
