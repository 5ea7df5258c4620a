//! Cuts given sticks one after the other, again and again; what was left over or lay badly is worth more the next time.

use super::column::Plan;
use super::greedy::filled;
use super::meter::Meter;
use super::mixes::Cut;
use super::pricing::Pricer;
use super::task::Task;

/// A piece that was left over should have been worth so many times as much.
const LEFT_OVER: f64 = 1.4;
/// The part of a piece's worth that its length alone gives it.
const BY_LENGTH: f64 = 0.1;
/// Whole parts of the greatest worth.
const PARTS: f64 = (1_u64 << 36) as f64;

/// How long and how fast worths learn.
#[derive(Clone, Copy, Debug)]
pub(super) struct Rounds {
    pub most: u32,
    /// The part of what a piece should have been worth that goes into what it is worth next.
    pub gain: f64,
}

/// Worths that learn from one round to the next.
pub(super) struct Packing<'a> {
    task: &'a Task,
    pricer: &'a Pricer,
    /// What a piece of each item takes of its stick's worth, and the most that a stick of each stock can hold of it.
    base: Vec<f64>,
    full: Vec<f64>,
    worth: Vec<f64>,
}

impl<'a> Packing<'a> {
    /// Begins with the worths of a cut.
    pub(super) fn new(task: &'a Task, pricer: &'a Pricer, cut: &Cut) -> Packing<'a> {
        let total = |worth: &dyn Fn(usize) -> f64| -> f64 {
            let items = task.items.iter().enumerate();
            items.map(|(i, item)| worth(i) * item.count as f64).sum()
        };
        let by_cut = |i: usize| cut.worth[i] as f64;
        let by_width = |i: usize| task.items[i].width as f64;
        let unit = (total(&by_cut) / total(&by_width)).max(f64::MIN_POSITIVE);
        let base: Vec<f64> = (0..task.items.len())
            .map(|i| by_cut(i) / unit * (1.0 - BY_LENGTH) + by_width(i) * BY_LENGTH)
            .collect();
        let stocks = task.stocks.iter().zip(&cut.fill);
        let full = stocks
            .map(|(s, fill)| *fill as f64 / unit * (1.0 - BY_LENGTH) + s.room as f64 * BY_LENGTH)
            .collect();
        Packing {
            task,
            pricer,
            worth: base.clone(),
            base,
            full,
        }
    }

    /// All pieces on the sticks of this mix, if that comes about.
    pub(super) fn pack(&mut self, mix: &[u64], rounds: Rounds, meter: &mut Meter) -> Option<Plan> {
        for round in 0..rounds.most {
            let (plan, left) = self.once(mix, round % 2 == 1, meter)?;
            if left.iter().all(|n| *n == 0) {
                return Some(plan);
            }
            self.learn(rounds.gain, &plan, &left);
        }
        None
    }

    /// Fills stick by stick, the longest or the shortest first; the plan and what is left over.
    fn once(
        &self,
        mix: &[u64],
        shortest_first: bool,
        meter: &mut Meter,
    ) -> Option<(Plan, Vec<u64>)> {
        let most = self.worth.iter().copied().fold(0.0, f64::max);
        let worth: Vec<u64> = self
            .worth
            .iter()
            .map(|w| (w / most * PARTS) as u64 + 1)
            .collect();
        let mut left = self.task.counts();
        let mut plan = Plan::default();
        let mut stocks: Vec<usize> = (0..mix.len()).collect();
        if !shortest_first {
            stocks.reverse();
        }
        for stock in stocks {
            for _ in 0..mix[stock] {
                if left.iter().all(|n| *n == 0) {
                    return Some((plan, left));
                }
                let mut offers = self.pricer.within(self.task, &worth, &left, meter)?;
                let (_, offer) = offers.swap_remove(stock);
                let Some(column) = filled(self.task, &offer, &left) else {
                    break;
                };
                for &item in &column.order {
                    left[item] -= 1;
                }
                plan.add(column, 1);
            }
        }
        Some((plan, left))
    }

    /// Makes pieces worth more that were left over, or that lay on sticks not filled as well as they can be.
    fn learn(&mut self, gain: f64, plan: &Plan, left: &[u64]) {
        let mut sum: Vec<f64> = left.iter().map(|n| *n as f64 * LEFT_OVER).collect();
        for (column, times) in &plan.columns {
            let here: f64 = column.order.iter().map(|i| self.base[*i]).sum();
            let ratio = (self.full[column.stock] / here).clamp(0.9, LEFT_OVER);
            for &item in &column.order {
                sum[item] += ratio * *times as f64;
            }
        }
        for ((worth, item), sum) in self.worth.iter_mut().zip(&self.task.items).zip(sum) {
            let ratio = sum / item.count.max(1) as f64;
            *worth *= 1.0 - gain + gain * ratio;
        }
    }
}
