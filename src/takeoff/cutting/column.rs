//! One way to fill a stick, as the search sees it.

use super::task::Task;

/// Pieces on a stock, in the order in which they are laid.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Column {
    pub stock: usize,
    /// Which items, from the marked end.
    pub order: Vec<usize>,
}

impl Column {
    /// How many of each item, for the items it holds, in the order of the items.
    pub(super) fn counts(&self) -> Vec<(usize, u64)> {
        let mut sorted = self.order.clone();
        sorted.sort_unstable();
        sorted
            .chunk_by(|a, b| a == b)
            .map(|run| (run[0], run.len() as u64))
            .collect()
    }

    /// The same without pieces that are not needed any more, on the cheapest stock that it fits then; `None` if
    /// nothing is left of it.
    pub(super) fn clipped(&self, task: &Task, counts: &[u64]) -> Option<Column> {
        let mut taken = vec![0; counts.len()];
        let mut order = Vec::with_capacity(self.order.len());
        for &item in &self.order {
            if taken[item] < counts[item] {
                taken[item] += 1;
                order.push(item);
            }
        }
        Column::of(task, order)
    }

    /// Pieces in this order on the cheapest stock that they fit; `None` if there are none, or no stock is long enough.
    pub(super) fn of(task: &Task, order: Vec<usize>) -> Option<Column> {
        if order.is_empty() {
            return None;
        }
        let stock = task.cheapest(extent(task, &order))?;
        Some(Column { stock, order })
    }

    /// How often it can be cut without a piece too many.
    pub(super) fn times(&self, counts: &[u64]) -> u64 {
        self.counts()
            .iter()
            .map(|&(item, n)| counts[item] / n)
            .min()
            .unwrap_or(0)
    }
}

/// Where the last of these pieces ends, with its cut.
pub(super) fn extent(task: &Task, order: &[usize]) -> u64 {
    order.iter().fold(0, |at, &item| task.lay(at, item).end)
}

/// Columns and how often each is cut.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Plan {
    pub columns: Vec<(Column, u64)>,
}

impl Plan {
    pub(super) fn add(&mut self, column: Column, times: u64) {
        self.columns.push((column, times));
    }

    pub(super) fn price(&self, task: &Task) -> u128 {
        self.columns
            .iter()
            .map(|(c, n)| u128::from(task.stocks[c.stock].price) * u128::from(*n))
            .sum()
    }

    pub(super) fn cost(&self, task: &Task) -> u128 {
        self.columns
            .iter()
            .map(|(c, n)| u128::from(task.stocks[c.stock].cost) * u128::from(*n))
            .sum()
    }

    pub(super) fn sticks(&self) -> u128 {
        self.columns.iter().map(|(_, n)| u128::from(*n)).sum()
    }
}
