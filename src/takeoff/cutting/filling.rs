//! Whether a mix of many sticks can be cut into all pieces: the bulk by rounding down the relaxation, the tail by search.

use super::column::{Column, Plan};
use super::covering::{Covering, Fit};
use super::greedy::joined;
use super::master::Pool;
use super::meter::Meter;
use super::mixed::{Verdict, judge, shares};
use super::mixes::Cut;
use super::packing::{Packing, Rounds};
use super::pricing::Pricer;
use super::task::Task;

/// More columns than this are not searched.
const MOST_COLUMNS: usize = 5_000;
/// No more sticks than this are packed.
const PACKED: u64 = 40;
/// Cuts that the search looks at.
const CUTS: usize = 4;

/// Whether this mix can be cut into the pieces of the task, searching once no more than `tail` sticks are left.
pub(super) fn fit(
    task: &Task,
    pricer: &Pricer,
    (cuts, pool): (&[Cut], &Pool),
    (mix, tail): (&[u64], u64),
    meter: &mut Meter,
) -> Fit {
    let Some(bulk) = Bulk::rounded(task, pricer, pool, (mix, tail), meter) else {
        return Fit::Unknown;
    };
    let whole = bulk.plan.columns.is_empty();
    match search(&bulk.task, pricer, cuts, &bulk.mix, meter) {
        Fit::Found(rest) => Fit::Found(joined(bulk.plan, rest)),
        Fit::Impossible if whole => Fit::Impossible,
        _ => Fit::Unknown,
    }
}

/// All pieces on this mix by rounding and packing, if that comes about.
pub(super) fn packed(
    task: &Task,
    pricer: &Pricer,
    (cuts, pool): (&[Cut], &Pool),
    (mix, rounds): (&[u64], Rounds),
    meter: &mut Meter,
) -> Option<Plan> {
    let bulk = Bulk::rounded(task, pricer, pool, (mix, PACKED), meter)?;
    let mut packing = Packing::new(&bulk.task, pricer, cuts.first()?);
    let rest = packing.pack(&bulk.mix, rounds, meter)?;
    Some(joined(bulk.plan, rest))
}

/// The search on its own, with the cuts that leave least slack.
fn search(task: &Task, pricer: &Pricer, cuts: &[Cut], mix: &[u64], meter: &mut Meter) -> Fit {
    let counts = task.counts();
    let Some((tight, slack)) = tightest(cuts, &counts, mix) else {
        return Fit::Impossible;
    };
    let Some((columns, all)) = columns(task, pricer, (&tight, slack), mix, meter) else {
        return Fit::Unknown;
    };
    let fit = Covering::new(task, &tight, &columns).fit(&counts, mix, meter);
    if fit == Fit::Impossible && !all {
        Fit::Unknown
    } else {
        fit
    }
}

/// The cuts that leave least slack for their size, the tightest first, and the slack of that; `None` if one forbids the mix.
pub(super) fn tightest(cuts: &[Cut], counts: &[u64], mix: &[u64]) -> Option<(Vec<Cut>, u128)> {
    let mut tight: Vec<(f64, u128, &Cut)> = Vec::new();
    for cut in cuts {
        let slack = cut.slack(counts, mix)?;
        tight.push((slack as f64 / (cut.need(counts) as f64 + 1.0), slack, cut));
    }
    tight.sort_by(|a, b| a.0.total_cmp(&b.0));
    tight.truncate(CUTS);
    let slack = tight.first().map_or(0, |t| t.1);
    Some((tight.into_iter().map(|t| t.2.clone()).collect(), slack))
}

/// The columns that waste no more than the slack by the first of the cuts, and whether these are all.
///
/// Where they are too many, those that waste less will have to do, and then nothing is proven by them.
pub(super) fn columns(
    task: &Task,
    pricer: &Pricer,
    (cuts, slack): (&[Cut], u128),
    mix: &[u64],
    meter: &mut Meter,
) -> Option<(Vec<Column>, bool)> {
    let first = cuts.first()?;
    let mut slack = slack;
    let mut all = true;
    loop {
        let worth = |fill: u64| u128::from(fill).saturating_sub(slack) as u64;
        let fills = first.fill.iter().zip(mix);
        let least: Vec<Option<u64>> = fills.map(|(f, n)| (*n > 0).then(|| worth(*f))).collect();
        if let Some(columns) = pricer.all(task, &first.worth, &least, MOST_COLUMNS, meter) {
            return Some((columns, all));
        }
        all = false;
        slack /= 2;
        if slack == 0 || meter.spend(0).is_none() {
            return None;
        }
    }
}

/// What is still to be cut, from which sticks, and what has been cut.
struct Bulk {
    task: Task,
    mix: Vec<u64>,
    plan: Plan,
    pool: Pool,
}

impl Bulk {
    /// A mix rounded down until no more than `tail` sticks are left.
    fn rounded(
        task: &Task,
        pricer: &Pricer,
        pool: &Pool,
        (mix, tail): (&[u64], u64),
        meter: &mut Meter,
    ) -> Option<Bulk> {
        let mut bulk = Bulk {
            task: task.clone(),
            mix: mix.to_vec(),
            plan: Plan::default(),
            pool: pool.clone(),
        };
        while let Some(more) = bulk.above(tail) {
            bulk.round(pricer, more, meter)?;
        }
        Some(bulk)
    }

    /// How many sticks there are more than `tail`, if any.
    fn above(&self, tail: u64) -> Option<u64> {
        let sticks: u64 = self.mix.iter().sum();
        sticks.checked_sub(tail).filter(|more| *more > 0)
    }

    /// Takes the whole part of the relaxation, or one of the largest fraction where there is none; `most` sticks at most.
    fn round(&mut self, pricer: &Pricer, most: u64, meter: &mut Meter) -> Option<()> {
        let counts = self.task.counts();
        let mut pool = Pool::default();
        for column in &self.pool.columns {
            if let Some(column) = column.clipped(&self.task, &counts) {
                pool.add(column);
            }
        }
        self.pool = pool;
        let state = (&counts[..], &self.mix[..]);
        if let Verdict::Forbidden(_) = judge(&self.task, pricer, state, &mut self.pool, meter)? {
            return None;
        }
        let share = shares(&self.task, state, &self.pool.columns, meter)?;
        let columns = std::mem::take(&mut self.pool.columns);
        let mut order: Vec<usize> = (0..share.len()).collect();
        order.sort_by(|&a, &b| share[b].total_cmp(&share[a]).then(a.cmp(&b)));
        let mut left = most;
        for &index in &order {
            let whole = (share[index] + 1e-7).floor() as u64;
            left -= self.take(&columns[index], whole.min(left));
        }
        if left == most && self.take(&columns[*order.first()?], 1) == 0 {
            return None;
        }
        self.pool.columns = columns;
        Some(())
    }

    /// Cuts a column as often, without pieces too many and as far as there are sticks; how often.
    fn take(&mut self, column: &Column, times: u64) -> u64 {
        let counts = self.task.counts();
        let Some(clipped) = column.clipped(&self.task, &counts) else {
            return 0;
        };
        let times = times
            .min(clipped.times(&counts))
            .min(self.mix[column.stock]);
        for (item, n) in clipped.counts() {
            self.task.items[item].count -= n * times;
        }
        self.mix[column.stock] -= times;
        if times > 0 {
            self.plan.add(clipped, times);
        }
        times
    }
}
