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

/// The supply that serves an amount for the least money, with how many of it; of unpriced ones the first. Any price beats
/// none.
pub(super) fn cheapest<'a>(
    supplies: impl Iterator<Item = &'a Supply>,
    amount: Amount,
) -> Option<(&'a Supply, u32)> {
    let counted = supplies.filter_map(|s| Some((s, whole(units(&s.form, amount)?))));
    counted.min_by_key(|(supply, count)| {
        let cost = supply.price.map(|p| p.times(*count));
        (cost.is_none(), cost)
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
            shop: String::new(),
            price: cents.map(Money::cents),
            example: true,
            place: Place::default(),
        }
    }

    #[test]
    fn the_cheapest_that_serves_is_bought_and_a_price_beats_none() {
        // 250 screws: three boxes of 100 at 4.00 are 12.00, one of 500 at 11.50 is less; of 150, two at 6.00 are 12.00.
        let list = [
            boxes(100, Some(400)),
            boxes(500, Some(1150)),
            boxes(1000, None),
        ];
        let chosen = cheapest(list.iter(), Amount::Count(250)).map(|(s, n)| (s.name.clone(), n));
        assert_eq!(chosen, Some(("box of 500".to_owned(), 1)));
        let chosen = cheapest(list[..1].iter(), Amount::Count(250)).map(|(_, n)| n);
        assert_eq!(chosen, Some(3));
        let metre = Amount::Length(Length::millimetres(1000.0));
        assert!(cheapest(list.iter(), metre).is_none());
    }
}
