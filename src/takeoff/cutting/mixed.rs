//! The relaxation for a given mix of sticks: either a cut that forbids the mix, or fractions that say how to cut it.

use microlp::{ComparisonOp, OptimizationDirection, Problem, Solution, Variable};

use super::column::Column;
use super::lp::{Pivots, solved};
use super::master::Pool;
use super::meter::Meter;
use super::mixes::Cut;
use super::pricing::Pricer;
use super::task::Task;

/// Parts in which the dearest piece is worth 1.
const PARTS: f64 = (1_u64 << 40) as f64;

/// What the relaxation says of a mix.
#[derive(Clone, Debug)]
pub(super) enum Verdict {
    /// It cannot hold the pieces, for it breaks this cut.
    Forbidden(Cut),
    /// In fractions, at least, it can.
    Open,
}

/// Looks for worths by which the mix cannot hold the pieces, adding columns to the pool; `None` if the work ran out.
pub(super) fn judge(
    task: &Task,
    pricer: &Pricer,
    (counts, mix): (&[u64], &[u64]),
    pool: &mut Pool,
    meter: &mut Meter,
) -> Option<Verdict> {
    let dual = Dual::new(counts, mix, &pool.columns);
    let mut solution = solved(dual.problem.solve())?;
    let mut pivots = Pivots::default();
    loop {
        meter.spend(pivots.steps(&solution, counts.len() + pool.columns.len()))?;
        if solution.objective() < 1e-7 {
            return Some(Verdict::Open);
        }
        let worth = dual.worth(&solution);
        let offers = pricer.best(task, &worth, counts, meter)?;
        let fill = offers.iter().map(|o| o.0).collect();
        let cut = Cut { worth, fill };
        if cut.slack(counts, mix).is_none() {
            return Some(Verdict::Forbidden(cut));
        }
        let mut added = false;
        for (_, column) in offers {
            if mix[column.stock] == 0 || !pool.add(column.clone()) {
                continue;
            }
            added = true;
            let terms = dual.terms(&column);
            solution = solved(solution.add_constraint(&terms[..], ComparisonOp::Le, 0.0))?;
        }
        if !added {
            return Some(Verdict::Open);
        }
    }
}

/// The dual of the mix's relaxation: a worth of each piece up to 1, and of each stick; no column is worth more than its stick.
struct Dual {
    problem: Problem,
    pieces: Vec<Option<Variable>>,
    sticks: Vec<Option<Variable>>,
}

impl Dual {
    fn new(counts: &[u64], mix: &[u64], columns: &[Column]) -> Dual {
        let mut problem = Problem::new(OptimizationDirection::Maximize);
        let mut variables = |numbers: &[u64], sign: f64, most: f64| -> Vec<Option<Variable>> {
            let variable =
                |n: &u64| (*n > 0).then(|| problem.add_var(sign * *n as f64, (0.0, most)));
            numbers.iter().map(variable).collect()
        };
        let pieces = variables(counts, 1.0, 1.0);
        let sticks = variables(mix, -1.0, f64::INFINITY);
        let mut dual = Dual {
            problem,
            pieces,
            sticks,
        };
        for column in columns.iter().filter(|c| mix[c.stock] > 0) {
            let terms = dual.terms(column);
            dual.problem
                .add_constraint(&terms[..], ComparisonOp::Le, 0.0);
        }
        dual
    }

    fn terms(&self, column: &Column) -> Vec<(Variable, f64)> {
        let piece = |&(item, n): &(usize, u64)| Some((self.pieces[item]?, n as f64));
        let stick = self.sticks[column.stock].map(|s| (s, -1.0));
        column
            .counts()
            .iter()
            .filter_map(piece)
            .chain(stick)
            .collect()
    }

    fn worth(&self, solution: &Solution) -> Vec<u64> {
        let worth =
            |p: &Option<Variable>| p.map_or(0.0, |p| solution[p].clamp(0.0, 1.0) * PARTS) as u64;
        self.pieces.iter().map(worth).collect()
    }
}

/// How often each column is cut, in fractions, so that the mix holds the pieces; `None` if these columns do not allow it.
pub(super) fn shares(
    task: &Task,
    (counts, mix): (&[u64], &[u64]),
    columns: &[Column],
    meter: &mut Meter,
) -> Option<Vec<f64>> {
    let mut problem = Problem::new(OptimizationDirection::Minimize);
    let mut pieces = vec![Vec::new(); counts.len()];
    let mut sticks = vec![Vec::new(); mix.len()];
    let mut times = Vec::new();
    for column in columns {
        // Any answer will do; the one that fills the fullest leaves the others loose.
        let used: u64 = column.order.iter().map(|i| task.items[*i].width).sum();
        let waste = 1.0 - used as f64 / task.stocks[column.stock].room as f64;
        let variable = problem.add_var(waste.max(0.0), (0.0, f64::INFINITY));
        for (item, n) in column.counts() {
            pieces[item].push((variable, n as f64));
        }
        sticks[column.stock].push((variable, 1.0));
        times.push(variable);
    }
    for (row, &count) in pieces.iter().zip(counts).filter(|(_, n)| **n > 0) {
        problem.add_constraint(&row[..], ComparisonOp::Ge, count as f64);
    }
    for (row, &n) in sticks.iter().zip(mix) {
        problem.add_constraint(&row[..], ComparisonOp::Le, n as f64);
    }
    let solution = solved(problem.solve())?;
    meter.spend(Pivots::default().steps(&solution, counts.len() + columns.len()))?;
    Some(times.iter().map(|t| solution[*t].max(0.0)).collect())
}
