//! The linear relaxation, by column generation on its dual.
//!
//! The dual has a variable for the worth of a piece of each item, and a row for each column: what it holds is not worth more
//! than its stock. A new column is a new row, from which the solver goes on without starting again.

use std::collections::BTreeSet;

use microlp::{ComparisonOp, OptimizationDirection, Problem, Variable};

use super::bound::Duals;
use super::column::Column;
use super::lp::{Pivots, solved};
use super::meter::Meter;
use super::pricing::Pricer;
use super::task::Task;

/// The columns found so far, each once.
#[derive(Clone, Debug, Default)]
pub(super) struct Pool {
    pub columns: Vec<Column>,
    known: BTreeSet<(usize, Vec<(usize, u64)>)>,
}

impl Pool {
    /// Whether it is new.
    pub(super) fn add(&mut self, column: Column) -> bool {
        let new = self.known.insert((column.stock, column.counts()));
        if new {
            self.columns.push(column);
        }
        new
    }
}

/// What the relaxation says.
#[derive(Clone, Debug)]
pub(super) struct Relaxed {
    /// Worths that prove the bound.
    pub duals: Duals,
    /// The least whole price of an answer.
    pub bound: u128,
}

/// Solves the relaxation for these counts, adding columns to the pool; stops early once the bound reaches `enough`.
///
/// `None` if not even one bound was found.
pub(super) fn relax(
    task: &Task,
    pricer: &Pricer,
    counts: &[u64],
    pool: &mut Pool,
    enough: u128,
    meter: &mut Meter,
) -> Option<Relaxed> {
    let dearest = dearest(task);
    let (problem, worths) = dual(task, counts, &pool.columns);
    let mut solution = solved(problem.solve())?;
    let mut best: Option<Relaxed> = None;
    let mut pivots = Pivots::default();
    loop {
        let size = counts.len() + pool.columns.len();
        if meter.spend(pivots.steps(&solution, size)).is_none() {
            return best;
        }
        let values: Vec<f64> = worths
            .iter()
            .map(|w| w.map_or(0.0, |w| solution[w]))
            .collect();
        let duals = Duals::whole(task, &values);
        let Some(offers) = pricer.best(task, &duals.worth, counts, meter) else {
            return best;
        };
        let worth: Vec<u64> = offers.iter().map(|o| o.0).collect();
        let lowered = duals.lowered(task, &worth);
        let bound = lowered.price(counts);
        if best.as_ref().is_none_or(|b| {
            bound > b.bound || (bound == b.bound && lowered.total(counts) > b.duals.total(counts))
        }) {
            best = Some(Relaxed {
                duals: lowered,
                bound,
            });
        }
        if bound >= enough {
            return best;
        }
        let mut added = false;
        for column in inviting(task, &duals, offers) {
            if !pool.add(column.clone()) {
                continue;
            }
            added = true;
            let terms: Vec<(Variable, f64)> = column
                .counts()
                .iter()
                .filter_map(|&(i, n)| Some((worths[i]?, n as f64)))
                .collect();
            let price = task.stocks[column.stock].price as f64 / dearest;
            match solved(solution.add_constraint(&terms[..], ComparisonOp::Le, price)) {
                Some(next) => solution = next,
                None => return best,
            }
        }
        if !added {
            return best;
        }
    }
}

/// The offers worth more than their stock, the best for their price first.
fn inviting(task: &Task, duals: &Duals, offers: Vec<(u64, Column)>) -> Vec<Column> {
    let mut inviting: Vec<(f64, Column)> = offers
        .into_iter()
        .map(|(worth, column)| {
            let price = task.stocks[column.stock].price as f64 * duals.parts as f64;
            (worth as f64 - price, price, column)
        })
        .filter(|(more, price, _)| *more > price * 1e-9)
        .map(|(more, _, column)| (more, column))
        .collect();
    inviting.sort_by(|a, b| b.0.total_cmp(&a.0).then_with(|| a.1.cmp(&b.1)));
    inviting
        .into_iter()
        .map(|(_, column)| column)
        .take(3)
        .collect()
}

pub(super) fn dearest(task: &Task) -> f64 {
    task.stocks
        .iter()
        .map(|s| s.price)
        .max()
        .unwrap_or(1)
        .max(1) as f64
}

/// The dual problem of these columns; items that are not needed have no variable.
fn dual(task: &Task, counts: &[u64], columns: &[Column]) -> (Problem, Vec<Option<Variable>>) {
    let mut problem = Problem::new(OptimizationDirection::Maximize);
    let worths: Vec<Option<Variable>> = counts
        .iter()
        .map(|n| (*n > 0).then(|| problem.add_var(*n as f64, (0.0, 1.0))))
        .collect();
    for column in columns {
        let terms: Vec<(Variable, f64)> = column
            .counts()
            .iter()
            .filter_map(|&(i, n)| Some((worths[i]?, n as f64)))
            .collect();
        problem.add_constraint(
            &terms[..],
            ComparisonOp::Le,
            task.stocks[column.stock].price as f64 / dearest(task),
        );
    }
    (problem, worths)
}

/// How often each column is cut in the relaxation, in fractions.
pub(super) fn shares(
    task: &Task,
    counts: &[u64],
    columns: &[Column],
    meter: &mut Meter,
) -> Option<Vec<f64>> {
    let mut problem = Problem::new(OptimizationDirection::Minimize);
    let dearest = dearest(task);
    let mut rows: Vec<Vec<(Variable, f64)>> = vec![Vec::new(); counts.len()];
    let mut times = Vec::new();
    for column in columns {
        let price = task.stocks[column.stock].price as f64 / dearest;
        let variable = problem.add_var(price, (0.0, f64::INFINITY));
        for (item, n) in column.counts() {
            rows[item].push((variable, n as f64));
        }
        times.push(variable);
    }
    for (row, &count) in rows.iter().zip(counts).filter(|(_, n)| **n > 0) {
        problem.add_constraint(&row[..], ComparisonOp::Ge, count as f64);
    }
    let solution = solved(problem.solve())?;
    meter.spend(Pivots::default().steps(&solution, counts.len() + columns.len()))?;
    Some(times.iter().map(|t| solution[*t].max(0.0)).collect())
}
