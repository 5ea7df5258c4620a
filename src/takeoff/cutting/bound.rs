//! Lower bounds in whole numbers: what no answer can go below, whatever the floating-point solver says.

use super::task::Task;

/// What each piece is worth, in whole parts of a price, such that no filling of a stock is worth more than the stock's price.
#[derive(Clone, Debug)]
pub(super) struct Duals {
    pub worth: Vec<u64>,
    /// Parts to one price unit.
    pub parts: u64,
}

impl Duals {
    /// Makes such worths of those that a floating-point solver gives.
    ///
    /// `values` are in units of the dearest price; `fills` gives what the best filling of every stock is worth.
    pub(super) fn whole(task: &Task, values: &[f64]) -> Duals {
        let dearest = task
            .stocks
            .iter()
            .map(|s| s.price)
            .max()
            .unwrap_or(1)
            .max(1);
        let parts = ((1_u64 << 44) / dearest).max(1);
        let unit = dearest as f64 * parts as f64;
        let worth = values
            .iter()
            .map(|v| (v.max(0.0) * unit).min(unit) as u64)
            .collect();
        Duals { worth, parts }
    }

    /// Scales them down until the best filling of no stock, of worth `best`, is worth more than its price.
    pub(super) fn lowered(&self, task: &Task, best: &[u64]) -> Duals {
        let ratio = task
            .stocks
            .iter()
            .zip(best)
            .map(|(s, b)| (u128::from(s.price) * u128::from(self.parts), u128::from(*b)));
        // The smallest price for each worth: a/b < c/d where a·d < c·b.
        let tightest = ratio
            .filter(|(price, best)| best > price)
            .reduce(|x, y| if y.0 * x.1 < x.0 * y.1 { y } else { x });
        let Some((price, best)) = tightest else {
            return self.clone();
        };
        let worth = self
            .worth
            .iter()
            .map(|w| (u128::from(*w) * price / best) as u64)
            .collect();
        Duals {
            worth,
            parts: self.parts,
        }
    }

    /// What all pieces are worth together, in parts.
    pub(super) fn total(&self, counts: &[u64]) -> u128 {
        self.worth
            .iter()
            .zip(counts)
            .map(|(w, n)| u128::from(*w) * u128::from(*n))
            .sum()
    }

    /// The least whole price of an answer.
    pub(super) fn price(&self, counts: &[u64]) -> u128 {
        self.total(counts).div_ceil(u128::from(self.parts))
    }
}

/// The bound that needs no solver: room enough for all the widths, at the price of the stock that gives most room for it.
pub(super) fn by_width(task: &Task) -> u128 {
    let width = task.width();
    let needed =
        |s: &super::task::Stock| (width * u128::from(s.price)).div_ceil(u128::from(s.room.max(1)));
    task.stocks.iter().map(needed).min().unwrap_or(0)
}
