//! To proof: every column that a better answer could hold, and the best whole choice among them.
//!
//! A column whose price exceeds the worth of its pieces by more than the known answer exceeds the bound cannot be in a better answer.
//! Where the columns that remain can be listed, the best choice among them by branch and bound is the best of all.

use microlp::{
    ComparisonOp, OptimizationDirection, Problem, SolveOptions, TerminationReason, Variable,
};

use super::bound::Duals;
use super::column::{Column, Plan};
use super::master::dearest;
use super::meter::Meter;
use super::pricing::Pricer;
use super::task::Task;

/// Every column that an answer of a price below `price` could hold, but for pieces that can be added without harm.
///
/// `None` if there are too many.
pub(super) fn candidates(
    task: &Task,
    pricer: &Pricer,
    duals: &Duals,
    price: u128,
    most: usize,
    meter: &mut Meter,
) -> Option<Vec<Column>> {
    let parts = u128::from(duals.parts);
    let slack = ((price - 1) * parts).saturating_sub(duals.total(&task.counts()));
    let least: Vec<u64> = task
        .stocks
        .iter()
        .map(|s| (u128::from(s.price) * parts).saturating_sub(slack) as u64)
        .collect();
    pricer.all(task, &duals.worth, &least, most, meter)
}

/// How a choice among columns ended.
#[derive(Debug)]
pub(super) struct Choice {
    /// The best that was found, if any costs less than what was known.
    pub plan: Option<Plan>,
    /// Whether no other choice among these columns is better.
    pub best: bool,
}

/// The best whole choice among these columns with a price from `bound` to below `price`.
pub(super) fn choose(
    task: &Task,
    counts: &[u64],
    columns: &[Column],
    (bound, price): (u128, u128),
    meter: &mut Meter,
) -> Choice {
    let open = Choice {
        plan: None,
        best: false,
    };
    let largest = counts.iter().max().copied().unwrap_or(0);
    if price >= 1 << 40 || largest > 1 << 20 {
        return open;
    }
    let mut problem = Problem::new(OptimizationDirection::Minimize);
    let mut rows: Vec<Vec<(Variable, f64)>> = vec![Vec::new(); counts.len()];
    let mut prices = Vec::new();
    let unit = dearest(task);
    for column in columns {
        let most = column
            .counts()
            .iter()
            .map(|&(i, n)| counts[i].div_ceil(n))
            .max()
            .unwrap_or(0);
        let cost = task.stocks[column.stock].price as f64;
        let variable = problem.add_integer_var(cost, (0, most as i32));
        prices.push((variable, cost / unit));
        for (item, n) in column.counts() {
            rows[item].push((variable, n as f64));
        }
    }
    for (row, &count) in rows.iter().zip(counts).filter(|(_, n)| **n > 0) {
        problem.add_constraint(&row[..], ComparisonOp::Ge, count as f64);
    }
    problem.add_constraint(&prices[..], ComparisonOp::Le, (price as f64 - 0.5) / unit);
    if bound > 0 {
        problem.add_constraint(&prices[..], ComparisonOp::Ge, (bound as f64 - 0.5) / unit);
    }
    let node = 300 * (columns.len() + 50) as u64 * (counts.len() as u64 + 5) / 10;
    let mut options = SolveOptions::default();
    options.node_limit = Some(meter.left() / node);
    let outcome = match problem.solve_with(options) {
        Ok(outcome) => outcome,
        Err(microlp::Error::Infeasible) => {
            return Choice {
                plan: None,
                best: true,
            };
        }
        Err(_) => return open,
    };
    let _ = meter.spend(outcome.stats().nodes_solved * node);
    let best = outcome.termination_reason() == TerminationReason::ProvenOptimal;
    let Some(solution) = outcome.solution() else {
        return open;
    };
    let mut left = counts.to_vec();
    let mut plan = Plan::default();
    for (column, (variable, _)) in columns.iter().zip(&prices) {
        let mut times = solution[*variable].round().max(0.0) as u64;
        while let Some(column) = column.clipped(task, &left).filter(|_| times > 0) {
            let now = times.min(column.times(&left));
            for (item, n) in column.counts() {
                left[item] -= n * now;
            }
            plan.add(column, now);
            times -= now;
        }
    }
    let served = left.iter().all(|n| *n == 0);
    Choice {
        plan: served.then_some(plan),
        best: best && served,
    }
}
