//! Which of several supplies to buy.

use crate::catalog::{Form, Gives, Supply};
use crate::takeoff::Amount;

/// How many units of a supply serve an amount, exact; `None` when it is not sold in such a unit.
pub(in crate::takeoff) fn units(form: &Form, amount: Amount) -> Option<f64> {
    let units = match (form, amount) {
        (Form::Stick { length } | Form::Roll { length, .. }, Amount::Length(needed)) => {
            needed / *length
        }
        (
            Form::Sheet { length, width, .. } | Form::Roll { length, width },
            Amount::Area(needed),
        ) => needed / (*length * *width),
        (
            Form::Bag {
                gives: Gives::Area(each),
                ..
            }
            | Form::Can { covers: each },
            Amount::Area(needed),
        ) => needed / *each,
        (
            Form::Bag {
                gives: Gives::Volume(each),
                ..
            },
            Amount::Volume(needed),
        ) => needed / *each,
        (Form::Pack { count }, Amount::Count(needed)) => f64::from(needed) / f64::from(*count),
        (Form::Each, Amount::Count(needed)) => f64::from(needed),
        _ => return None,
    };
    units.is_finite().then_some(units)
}

/// Whole units: what is a hair above a whole number only by rounding counts as it.
pub(in crate::takeoff) fn whole(units: f64) -> u32 {
    (units - 1e-9).ceil().clamp(0.0, f64::from(u32::MAX)) as u32
}

/// More units of one size than this are not weighed against another size.
const MOST: u32 = 2_000;

/// What to buy for an amount: of one or two sizes, whole units that together serve it, for the least money and then in the
/// fewest units; nothing where nobody sells it. Any price beats none; of unpriced supplies the first is taken.
pub(super) fn cheapest<'a>(supplies: &[&'a Supply], amount: Amount) -> Vec<(&'a Supply, u32)> {
    let sized: Vec<(&Supply, f64)> = supplies
        .iter()
        .filter_map(|s| Some((*s, units(&s.form, amount)?)))
        .collect();
    let priced = |(s, units): &(&'a Supply, f64)| Some((*s, *units, s.price?.in_cents()));
    let sizes: Vec<_> = sized.iter().filter_map(priced).collect();
    let alone = sizes.iter().map(|&(s, units, price)| {
        let count = whole(units);
        (price.saturating_mul(count.into()), count, vec![(s, count)])
    });
    let pairs = sizes
        .iter()
        .flat_map(|a| sizes.iter().flat_map(move |b| mixed(*a, *b)));
    let best = alone
        .chain(pairs)
        .min_by_key(|(cost, count, _)| (*cost, *count));
    let unpriced = || sized.first().map(|(s, units)| vec![(*s, whole(*units))]);
    best.map(|(.., lines)| lines)
        .or_else(unpriced)
        .unwrap_or_default()
}

type Size<'a> = (&'a Supply, f64, i64);
type Bought<'a> = (i64, u32, Vec<(&'a Supply, u32)>);

/// Every way to buy some units of the first size, too few to serve alone, and the rest in the second.
fn mixed<'a>(first: Size<'a>, second: Size<'a>) -> impl Iterator<Item = Bought<'a>> {
    let ((a, whole_a, price_a), (b, whole_b, price_b)) = (first, second);
    let most = if a.name == b.name {
        0
    } else {
        whole(whole_a).saturating_sub(1).min(MOST)
    };
    (1..=most).map(move |count| {
        let rest = whole(whole_b * (1.0 - f64::from(count) / whole_a));
        let cost = price_a * i64::from(count) + price_b.saturating_mul(rest.into());
        (
            cost,
            count.saturating_add(rest),
            vec![(a, count), (b, rest)],
        )
    })
}

/// The unit that a supply is sold in, in words.
pub(super) fn unit_name(form: &Form) -> &'static str {
    match form {
        Form::Stick { .. } => "stick",
        Form::Sheet { .. } => "sheet",
        Form::Bag { .. } => "bag",
        Form::Roll { .. } => "roll",
        Form::Can { .. } => "can",
        Form::Pack { .. } => "box",
        Form::Each => "each",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalog::Need;
    use crate::diagnostics::Place;
    use crate::units::{Length, Money};

    fn boxes(count: u32, cents: Option<i64>) -> Supply {
        Supply {
            name: format!("box of {count}"),
            need: Need::SteelScrew,
            form: Form::Pack { count },
            size: None,
            length: None,
            shop: String::new(),
            price: cents.map(Money::cents),
            example: true,
            place: Place::default(),
        }
    }

    fn chosen(list: &[Supply], amount: Amount) -> Vec<(String, u32)> {
        let all: Vec<_> = list.iter().collect();
        let chosen = cheapest(&all, amount);
        chosen
            .into_iter()
            .map(|(s, n)| (s.name.clone(), n))
            .collect()
    }

    #[test]
    fn the_cheapest_that_serves_is_bought_and_a_price_beats_none() {
        // 250 screws: three boxes of 100 at 4.00 are 12.00, one of 500 at 11.50 is less.
        let list = [
            boxes(100, Some(400)),
            boxes(500, Some(1150)),
            boxes(1000, None),
        ];
        let of = |name: &str, n| (name.to_owned(), n);
        assert_eq!(chosen(&list, Amount::Count(250)), [of("box of 500", 1)]);
        assert_eq!(
            chosen(&list[..1], Amount::Count(250)),
            [of("box of 100", 3)]
        );
        assert_eq!(
            chosen(&list[2..], Amount::Count(250)),
            [of("box of 1000", 1)]
        );
        let metre = Amount::Length(Length::millimetres(1000.0));
        assert!(chosen(&list, metre).is_empty());
    }

    #[test]
    fn two_sizes_together_are_bought_where_they_cost_less() {
        // 524 screws: six boxes of 100 at 6.90 are 41.40, two of 500 at 24.50 are 49.00; one of each 31.40.
        let list = [boxes(100, Some(690)), boxes(500, Some(2450))];
        let mut found = chosen(&list, Amount::Count(524));
        found.sort();
        let of = |name: &str, n| (name.to_owned(), n);
        assert_eq!(found, [of("box of 100", 1), of("box of 500", 1)]);
    }
}
