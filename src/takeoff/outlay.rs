//! What stock costs and how much of it is left over: the same for sticks and for sheets.

use crate::units::Money;

/// What so many of each cost together; `None` where one that is bought has no price.
pub(super) fn money(bought: impl Iterator<Item = (Option<Money>, u32)>) -> Option<Money> {
    bought
        .filter(|(_, count)| *count > 0)
        .map(|(price, count)| Some(price?.times(count)))
        .sum()
}

/// The share of what is bought that is not used; nothing where nothing is bought.
pub(super) fn waste(bought: f64, used: f64) -> f64 {
    if bought > 0.0 {
        1.0 - used / bought
    } else {
        0.0
    }
}

/// How far a cost lies above its lower bound, as a share of the bound.
pub(super) fn gap(cost: u64, bound: u64) -> f64 {
    if bound == 0 {
        0.0
    } else {
        cost as f64 / bound as f64 - 1.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_price_is_missed_only_where_something_is_bought() {
        // Three at 11.80 are 35.40.
        let cents = |n| Some(Money::cents(n));
        let bought = [(cents(1180), 3), (None, 0)];
        assert_eq!(money(bought.into_iter()), cents(3540));
        assert_eq!(money([(None, 1)].into_iter()), None);
        assert_eq!((waste(4.0, 3.0), waste(0.0, 0.0)), (0.25, 0.0));
        assert_eq!((gap(105, 100), gap(5, 0)), (105.0 / 100.0 - 1.0, 0.0));
    }
}
