//! Among equal answers the one that leaves the longest offcut: what comes off one stick is put on the others.

use std::collections::BTreeMap;

use super::column::{Column, Plan, extent};
use super::covering::{Covering, Fit};
use super::filling::{columns, tightest};
use super::greedy::joined;
use super::meter::Meter;
use super::mixes::{Cut, cheapest};
use super::pricing::Pricer;
use super::task::Task;

/// With more sticks than this only those that waste most are cut anew.
const STICKS: u64 = 12;
/// More choices of what stays on the stick of the offcut are not looked at.
const CHOICES: usize = 500;
/// More mixes of one price are not looked at.
const MIXES: usize = 20;

/// The longest offcut of an answer.
pub(super) fn longest(task: &Task, plan: &Plan) -> u64 {
    plan.columns
        .iter()
        .map(|(c, _)| of(task, c.stock, &c.order))
        .max()
        .unwrap_or(0)
}

/// What is left of a stick behind its last cut.
fn of(task: &Task, stock: usize, order: &[usize]) -> u64 {
    let left = task.stocks[stock].room - extent(task, order);
    left.saturating_sub(task.kerf)
}

/// What stays on the stick of the offcut, and how long that is then.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Choice {
    offcut: u64,
    order: Vec<usize>,
}

/// An answer of the same price with a longer offcut, if one is found; and whether none is longer.
pub(super) fn lengthened(
    task: &Task,
    pricer: &Pricer,
    cuts: &[Cut],
    plan: &Plan,
    meter: &mut Meter,
) -> (Option<Plan>, bool) {
    let (kept, part) = split(task, plan);
    let whole = kept.columns.is_empty();
    let mixes = if whole {
        equals(task, cuts, plan, meter)
    } else {
        None
    };
    let task = &rest(task, &part);
    let mut proven = whole && mixes.is_some();
    let mut best = Best {
        task,
        pricer,
        cuts,
        offcut: longest(task, plan),
        plan: None,
    };
    for mix in mixes.unwrap_or_else(|| vec![mix(&part, task)]) {
        for stock in (0..mix.len()).filter(|s| mix[*s] > 0) {
            proven &= best.stock(&mix, stock, meter).unwrap_or(false);
        }
    }
    (best.plan.map(|plan| joined(kept, plan)), proven)
}

/// The longest offcut so far.
struct Best<'a> {
    task: &'a Task,
    pricer: &'a Pricer,
    cuts: &'a [Cut],
    offcut: u64,
    plan: Option<Plan>,
}

impl Best<'_> {
    /// Looks for a longer offcut on a stick of this stock; whether there is no longer one than then known. `None` if the work
    /// ran out.
    fn stock(&mut self, mix: &[u64], stock: usize, meter: &mut Meter) -> Option<bool> {
        let task = self.task;
        let mut others = mix.to_vec();
        others[stock] -= 1;
        let (choices, mut all) = self.choices(stock, &others, meter)?;
        let rests: Vec<Vec<u64>> = choices.iter().map(|c| without(task, c)).collect();
        let Some(first) = rests.first() else {
            return Some(all);
        };
        let (cuts, _) = tightest(self.cuts, first, &others)?;
        // One list of columns for all choices, by one cut: as many as the choice that leaves most slack by it needs.
        let slack = |rest: &Vec<u64>| cuts.first()?.slack(rest, &others);
        let slack = rests.iter().filter_map(slack).max()?;
        let (columns, complete) = columns(task, self.pricer, (&cuts, slack), &others, meter)?;
        let covering = Covering::new(task, &cuts, &columns);
        for (choice, rest) in choices.into_iter().zip(rests) {
            let mut part = meter.part(4);
            let fit = covering.fit(&rest, &others, &mut part);
            meter.settle(4, &part);
            meter.spend(1_000)?;
            match fit {
                Fit::Found(mut plan) => {
                    plan.add(
                        Column {
                            stock,
                            order: choice.order,
                        },
                        1,
                    );
                    self.plan = Some(plan);
                    self.offcut = choice.offcut;
                    return Some(all);
                }
                Fit::Impossible => all &= complete,
                Fit::Unknown => all = false,
            }
        }
        Some(all)
    }

    /// What could stay on a stick of this stock so that more than now is left of it, the least first; whether these are all.
    fn choices(
        &self,
        stock: usize,
        others: &[u64],
        meter: &mut Meter,
    ) -> Option<(Vec<Choice>, bool)> {
        let task = self.task;
        let room = task.stocks[stock].room;
        let Some(limit) = room.checked_sub(task.kerf + self.offcut + 1) else {
            return Some((Vec::new(), true));
        };
        let mut kinds = Kinds {
            task,
            limit,
            seen: BTreeMap::new(),
        };
        let all = kinds.grow(&mut Vec::new(), 0).is_some();
        meter.spend(500 * kinds.seen.len() as u64)?;
        let choice = |(end, order): (u64, Vec<usize>)| Choice {
            offcut: room - end - task.kerf,
            order,
        };
        let enough = |c: &Choice| {
            let counts = without(task, c);
            !c.order.is_empty()
                && self
                    .cuts
                    .iter()
                    .all(|cut| cut.slack(&counts, others).is_some())
        };
        let mut choices: Vec<Choice> = kinds
            .seen
            .into_values()
            .map(choice)
            .filter(enough)
            .collect();
        choices.sort_by(|a, b| b.cmp(a));
        Some((choices, all))
    }
}

/// What is left to cut from the other sticks.
fn without(task: &Task, choice: &Choice) -> Vec<u64> {
    let mut counts = task.counts();
    for &item in &choice.order {
        counts[item] -= 1;
    }
    counts
}

/// The answer in two: what is kept, and the sticks that are cut anew.
fn split(task: &Task, plan: &Plan) -> (Plan, Plan) {
    let mut columns = plan.columns.clone();
    columns.sort_by_key(|(c, _)| {
        std::cmp::Reverse((
            task.stocks[c.stock].room - extent(task, &c.order),
            c.clone(),
        ))
    });
    let (mut kept, mut part) = (Plan::default(), Plan::default());
    let mut left = STICKS;
    for (column, times) in columns {
        let now = times.min(left);
        left -= now;
        if now > 0 {
            part.add(column.clone(), now);
        }
        if times > now {
            kept.add(column, times - now);
        }
    }
    (kept, part)
}

fn mix(plan: &Plan, task: &Task) -> Vec<u64> {
    let mut mix = vec![0; task.stocks.len()];
    for (column, times) in &plan.columns {
        mix[column.stock] += times;
    }
    mix
}

/// The task of cutting only what is on these sticks.
fn rest(task: &Task, plan: &Plan) -> Task {
    let mut task = task.clone();
    task.items.iter_mut().for_each(|item| item.count = 0);
    for (column, times) in &plan.columns {
        for (item, n) in column.counts() {
            task.items[item].count += n * times;
        }
    }
    task
}

/// All mixes of the price of this answer, or `None` if they are many.
fn equals(task: &Task, cuts: &[Cut], plan: &Plan, meter: &mut Meter) -> Option<Vec<Vec<u64>>> {
    if !task.scale.exact {
        return None;
    }
    let price = plan.price(task);
    let (mixes, _) = cheapest(task, cuts, (price, price + 1), MIXES, meter)?;
    Some(mixes.into_iter().map(|m| m.of).collect())
}

/// All choices of pieces that end within the limit, each in the order in which it ends first.
struct Kinds<'a> {
    task: &'a Task,
    limit: u64,
    seen: BTreeMap<Vec<usize>, (u64, Vec<usize>)>,
}

impl Kinds<'_> {
    fn grow(&mut self, order: &mut Vec<usize>, end: u64) -> Option<()> {
        let mut key = order.clone();
        key.sort_unstable();
        if self
            .seen
            .get(&key)
            .is_some_and(|(earliest, _)| *earliest <= end)
        {
            return Some(());
        }
        self.seen.insert(key, (end, order.clone()));
        if self.seen.len() > CHOICES {
            return None;
        }
        for item in 0..self.task.items.len() {
            let taken = order.iter().filter(|i| **i == item).count() as u64;
            let next = self.task.lay(end, item).end;
            if taken < self.task.items[item].count && next <= self.limit {
                order.push(item);
                let result = self.grow(order, next);
                order.pop();
                result?;
            }
        }
        Some(())
    }
}
