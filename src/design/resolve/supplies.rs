//! Supplies resolved: an entry that makes no sense is said and left out.

use super::gather::{Gather, Limits};
use super::sold;
use crate::catalog::{Need, SteelSection, Supplies, Supply, TradeData, TradeEntry};
use crate::design::{Buying, Placed};
use crate::diagnostics::{Place, Verdict};
use crate::parameters::{self, File, Given, PriceText, Serves, Size, nearest};
use crate::units::{Currency, Length, Money, Notation, parse_money};

/// More entries than this are not one file.
const MOST: usize = 2000;

/// What is known in the file that an entry stands in.
pub(super) struct Context<'f> {
    /// The names of its appliances and openings.
    pub(super) things: Vec<&'f str>,
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
    let appliances = file.appliances.entries().map(|(a, _)| &a.name);
    let openings = file.openings.entries().map(|(o, _)| &o.name);
    let names = appliances.chain(openings).filter_map(|n| n.value());
    let context = Context {
        things: names.map(|n| n.trim()).collect(),
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
    g.fail("other-currency", place, found, hint);
    if let Some(finding) = g.findings.last_mut() {
        finding.verdict = Verdict::Caution;
    }
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
    let needs = needs(g, &supply.serves, context);
    let form = sold::form(g, &supply.sold);
    let size = size(g, &supply.size);
    let shop = g.text(&supply.shop, "");
    let price = price(g, &supply.price, context);
    let (name, form, size) = (name?, form?, size?);
    let example = supply.example.value() == Some(&true);
    let of = |need| Supply {
        name: name.clone(),
        need,
        form: form.clone(),
        size,
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

/// What it serves, each once; those that are not known are put down.
fn needs(g: &mut Gather, given: &Given<Serves>, context: &Context) -> Vec<Need> {
    let place = given.place();
    let words: Vec<(&str, &Place)> = match given.value() {
        None => return Vec::new(),
        Some(Serves::One(word)) => vec![(word, &place)],
        Some(Serves::Several(list)) => list
            .iter()
            .filter_map(|item| match item {
                Given::Yes(word, place) => Some((word.as_str(), place)),
                _ => None,
            })
            .collect(),
    };
    if words.is_empty() {
        g.fail("unknown-need", &place, "it serves nothing", CHOICES);
    }
    let mut needs = Vec::new();
    for (word, place) in words {
        let need = need(g, word.trim(), place, context);
        if let Some(need) = need
            && !needs.contains(&need)
        {
            needs.push(need);
        }
    }
    needs
}

const CHOICES: &str = "write what it is for, such as board or concrete, a steel section such as 362S125-33, or the name of \
                       an appliance or opening of this file";

fn need(g: &mut Gather, word: &str, place: &Place, context: &Context) -> Option<Need> {
    if let Some(need) = Need::named(word) {
        return Some(need);
    }
    if context.things.contains(&word) {
        return Some(Need::Thing(word.to_owned()));
    }
    let section = SteelSection::from_designator(word);
    if let Ok(section) = section {
        return Some(Need::Steel(section.designator));
    }
    let near: Option<&str> = nearest(word, Need::names());
    let near = near.or_else(|| nearest(word, context.things.iter().copied()));
    let looks_like_steel = word.starts_with(|c: char| c.is_ascii_digit()) && word.contains('-');
    let found = match (near, section) {
        (None, Err(why)) if looks_like_steel => why,
        _ => format!("nothing is needed that is called '{}'", word.escape_debug()),
    };
    let hint = near.map_or_else(|| CHOICES.to_owned(), |n| format!("did you mean '{n}'?"));
    g.fail("unknown-need", place, found, hint);
    None
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
