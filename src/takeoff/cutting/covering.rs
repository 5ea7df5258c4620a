//! Whether given sticks can be cut so that every piece is served: a search that stops at the first way, or has seen that there is none.
//!
//! It takes the hardest piece that is still needed and tries every column that holds it; what cannot be reached any more by room or
//! by worth is not followed, nor what has failed before.

use std::collections::BTreeSet;

use super::column::{Column, Plan};
use super::meter::Meter;
use super::mixes::Cut;
use super::task::Task;

/// How a search ended.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Fit {
    /// They can, so.
    Found(Plan),
    /// They cannot.
    Impossible,
    /// The work ran out.
    Unknown,
}

/// The columns to choose from, ready for the search.
pub(super) struct Covering<'a> {
    task: &'a Task,
    cuts: &'a [Cut],
    columns: &'a [Column],
    counts: Vec<Vec<(usize, u64)>>,
    /// What each column is worth by each cut.
    worths: Vec<Vec<u64>>,
    /// The items, the hardest first.
    hardest: Vec<usize>,
    with_item: Vec<Vec<usize>>,
}

/// What is left to do at one place of the search.
#[derive(Clone)]
struct Rest {
    counts: Vec<u64>,
    mix: Vec<u64>,
    /// By each cut: how much more than needed the sticks that are left can hold.
    slack: Vec<u128>,
}

impl<'a> Covering<'a> {
    pub(super) fn new(task: &'a Task, cuts: &'a [Cut], columns: &'a [Column]) -> Covering<'a> {
        let counts: Vec<_> = columns.iter().map(Column::counts).collect();
        let mut with_item = vec![Vec::new(); task.items.len()];
        for (index, column) in counts.iter().enumerate() {
            for &(item, _) in column {
                with_item[item].push(index);
            }
        }
        let worth = |column: &Column, cut: &Cut| column.order.iter().map(|i| cut.worth[*i]).sum();
        let worths = columns
            .iter()
            .map(|c| cuts.iter().map(|cut| worth(c, cut)).collect())
            .collect();
        let mut hardest: Vec<usize> = (0..task.items.len()).collect();
        hardest.sort_by_key(|&i| (with_item[i].len(), usize::MAX - i));
        Covering {
            task,
            cuts,
            columns,
            counts,
            worths,
            hardest,
            with_item,
        }
    }

    /// Whether the sticks of a mix can be cut into these pieces.
    pub(super) fn fit(&self, counts: &[u64], mix: &[u64], meter: &mut Meter) -> Fit {
        let mut slack = Vec::new();
        for cut in self.cuts {
            let Some(more) = cut.slack(counts, mix) else {
                return Fit::Impossible;
            };
            slack.push(more);
        }
        let allowed: Vec<bool> = (0..self.columns.len())
            .map(|c| {
                let fills = self.cuts.iter().zip(&self.worths[c]).zip(&slack);
                let stock = self.columns[c].stock;
                fills
                    .into_iter()
                    .all(|((cut, w), more)| u128::from(cut.fill[stock].saturating_sub(*w)) <= *more)
            })
            .collect();
        let mut search = Search {
            covering: self,
            allowed,
            failed: BTreeSet::new(),
            chosen: Vec::new(),
        };
        let rest = Rest {
            counts: counts.to_vec(),
            mix: mix.to_vec(),
            slack,
        };
        match search.descend(&rest, meter) {
            None => Fit::Unknown,
            Some(false) => Fit::Impossible,
            Some(true) => Fit::Found(self.plan(counts, &search.chosen)),
        }
    }

    fn plan(&self, counts: &[u64], chosen: &[usize]) -> Plan {
        let mut left = counts.to_vec();
        let mut plan = Plan::default();
        for &index in chosen {
            if let Some(column) = self.columns[index].clipped(self.task, &left) {
                for (item, n) in column.counts() {
                    left[item] -= n;
                }
                plan.add(column, 1);
            }
        }
        plan
    }
}

struct Search<'a> {
    covering: &'a Covering<'a>,
    allowed: Vec<bool>,
    failed: BTreeSet<(Vec<u64>, Vec<u64>)>,
    chosen: Vec<usize>,
}

impl Search<'_> {
    /// Whether what is left can be cut; `None` once the work has run out.
    fn descend(&mut self, rest: &Rest, meter: &mut Meter) -> Option<bool> {
        let Some(&item) = self.covering.hardest.iter().find(|i| rest.counts[**i] > 0) else {
            return Some(true);
        };
        let key = (rest.counts.clone(), rest.mix.clone());
        meter.spend(300)?;
        if self.failed.contains(&key) {
            return Some(false);
        }
        for (index, next) in self.children(rest, item, meter)? {
            self.chosen.push(index);
            if self.descend(&next, meter)? {
                return Some(true);
            }
            self.chosen.pop();
        }
        self.failed.insert(key);
        Some(false)
    }

    /// What is left after each column that holds the item and can still lead to an end, the one that wastes least first.
    fn children(&self, rest: &Rest, item: usize, meter: &mut Meter) -> Option<Vec<(usize, Rest)>> {
        let mut children: Vec<(usize, Rest)> = Vec::new();
        for &index in &self.covering.with_item[item] {
            if !self.allowed[index] || rest.mix[self.covering.columns[index].stock] == 0 {
                continue;
            }
            meter.spend(30)?;
            let Some(next) = self.after(rest, index) else {
                continue;
            };
            let new =
                |(_, other): &(usize, Rest)| other.counts != next.counts || other.mix != next.mix;
            if children.iter().all(new) {
                children.push((index, next));
            }
        }
        children.sort_by(|a, b| b.1.slack.cmp(&a.1.slack).then(a.0.cmp(&b.0)));
        Some(children)
    }

    /// What is left after one column, if by every cut the sticks can still hold it.
    fn after(&self, rest: &Rest, index: usize) -> Option<Rest> {
        let stock = self.covering.columns[index].stock;
        let mut slack = Vec::with_capacity(rest.slack.len());
        let useful = |&(item, n): &(usize, u64)| (item, n.min(rest.counts[item]));
        for (cut, more) in self.covering.cuts.iter().zip(&rest.slack) {
            let gain: u64 = self.covering.counts[index]
                .iter()
                .map(useful)
                .map(|(i, n)| cut.worth[i] * n)
                .sum();
            slack.push((more + u128::from(gain)).checked_sub(cut.fill[stock].into())?);
        }
        let mut counts = rest.counts.clone();
        for (item, n) in self.covering.counts[index].iter().map(useful) {
            counts[item] -= n;
        }
        let mut mix = rest.mix.clone();
        mix[stock] -= 1;
        Some(Rest { counts, mix, slack })
    }
}
