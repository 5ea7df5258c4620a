//! From the fractions of the relaxation to whole sticks.

use super::column::Plan;
use super::greedy::{by_worth, first_fit, joined, take};
use super::master::{Pool, Relaxed, relax, shares};
use super::meter::Meter;
use super::pricing::Pricer;
use super::task::Task;

/// Rounds down, then fills what is left stick by stick. Several ways are tried; all serve every count exactly.
pub(super) fn rounded(
    task: &Task,
    pricer: &Pricer,
    pool: &Pool,
    (worth, share): (&[u64], &[f64]),
    meter: &mut Meter,
) -> Vec<Plan> {
    let counts = task.counts();
    let mut plans = Vec::new();
    for above in [1.1, 0.75, 0.5, 0.25] {
        let (plan, left) = whole(task, pool, share, &counts, above);
        plans.push(joined(plan.clone(), first_fit(task, &left)));
        if let Some(rest) = by_worth(task, pricer, worth, &left, meter) {
            plans.push(joined(plan, rest));
        }
    }
    plans
}

/// The whole part of each share, and one more where the fraction is at least `above` and the pieces are needed.
fn whole(task: &Task, pool: &Pool, share: &[f64], counts: &[u64], above: f64) -> (Plan, Vec<u64>) {
    let mut left = counts.to_vec();
    let mut plan = Plan::default();
    let floor = |s: f64| (s + 1e-7).floor();
    for (column, &s) in pool.columns.iter().zip(share) {
        let Some(column) = column.clipped(task, &left) else {
            continue;
        };
        let times = (floor(s) as u64).min(column.times(&left));
        for (item, n) in column.counts() {
            left[item] -= n * times;
        }
        if times > 0 {
            plan.add(column, times);
        }
    }
    let mut order: Vec<usize> = (0..share.len())
        .filter(|&i| share[i] - floor(share[i]) >= above)
        .collect();
    order.sort_by(|&a, &b| {
        (share[b] - floor(share[b]))
            .total_cmp(&(share[a] - floor(share[a])))
            .then(a.cmp(&b))
    });
    for index in order {
        let column = &pool.columns[index];
        if column.times(&left) > 0 {
            for (item, n) in column.counts() {
                left[item] -= n;
            }
            plan.add(column.clone(), 1);
        }
    }
    (plan, left)
}

/// Rounds down, solves the relaxation again for what is left, and so on; where nothing can be rounded down, the largest
/// fraction is rounded up.
pub(super) fn dive(
    task: &Task,
    pricer: &Pricer,
    pool: &Pool,
    first: &[f64],
    meter: &mut Meter,
) -> Option<Plan> {
    let mut pool = pool.clone();
    let mut left = task.counts();
    let mut plan = Plan::default();
    let mut share = first.to_vec();
    loop {
        let (part, rest) = whole(task, &pool, &share, &left, 2.0);
        if part.columns.is_empty() {
            let fitting = (0..share.len()).filter(|&i| pool.columns[i].times(&left) > 0);
            let Some(best) = fitting.max_by(|&a, &b| share[a].total_cmp(&share[b]).then(b.cmp(&a)))
            else {
                return Some(joined(plan, first_fit(task, &left)));
            };
            if share[best] <= 0.0 {
                return Some(joined(plan, first_fit(task, &left)));
            }
            let mut once = vec![0; left.len()];
            for (item, n) in pool.columns[best].counts() {
                once[item] = n;
                left[item] -= n;
            }
            take(&mut plan, pool.columns[best].clone(), &mut once);
        } else {
            plan = joined(plan, part);
            left = rest;
        }
        if left.iter().all(|n| *n == 0) {
            return Some(plan);
        }
        let mut narrowed = Pool::default();
        for column in &pool.columns {
            if let Some(column) = column.clipped(task, &left) {
                narrowed.add(column);
            }
        }
        pool = narrowed;
        let _: Relaxed = relax(task, pricer, &left, &mut pool, u128::MAX, meter)?;
        share = shares(task, &left, &pool.columns, meter)?;
    }
}
