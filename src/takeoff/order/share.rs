//! Dividing money without losing a cent.

use crate::units::Money;

/// Divides an amount in proportion to shares: rounded to cents, and the parts add up to the whole (largest remainder).
///
/// Without any positive share everything goes to the last.
pub(super) fn divide(amount: Money, shares: &[f64]) -> Vec<Money> {
    let total: f64 = shares.iter().filter(|s| **s > 0.0).sum();
    let mut parts = vec![Money::ZERO; shares.len()];
    if total <= 0.0 || !total.is_finite() {
        if let Some(last) = parts.last_mut() {
            *last = amount;
        }
        return parts;
    }
    let exact: Vec<f64> = shares
        .iter()
        .map(|s| amount.in_cents() as f64 * s.max(0.0) / total)
        .collect();
    for (part, exact) in parts.iter_mut().zip(&exact) {
        *part = Money::cents(exact.floor() as i64);
    }
    let mut rest = (amount - parts.iter().copied().sum()).in_cents();
    let mut order: Vec<usize> = (0..exact.len()).collect();
    order.sort_by(|a, b| {
        let fraction = |i: &usize| exact[*i] - exact[*i].floor();
        fraction(b).total_cmp(&fraction(a)).then(a.cmp(b))
    });
    for i in order {
        if rest == 0 {
            break;
        }
        parts[i] += Money::cents(1);
        rest -= 1;
    }
    parts
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn parts_add_up_and_the_largest_remainders_get_the_odd_cents() {
        // 10.00 in three: 3.34, 3.33, 3.33. 1.00 by 1 : 2 : 4 is 14.29, 28.57, 57.14 cents: 14, 29, 57.
        let cents = |amount, shares: &[f64]| -> Vec<i64> {
            divide(Money::cents(amount), shares)
                .iter()
                .map(|m| m.in_cents())
                .collect()
        };
        assert_eq!(cents(1000, &[1.0, 1.0, 1.0]), [334, 333, 333]);
        assert_eq!(cents(100, &[1.0, 2.0, 4.0]), [14, 29, 57]);
        assert_eq!(cents(700, &[0.0, 0.0]), [0, 700]);
        assert_eq!(cents(5, &[0.0, 3.0, 0.0]), [0, 5, 0]);
    }
}
