//! Answers made stick by stick: a first one without any solver, and what is left after rounding.

use super::column::{Column, Plan, extent};
use super::meter::Meter;
use super::pricing::Pricer;
use super::task::Task;

/// No stick is given more pieces than this, lest the list of them have no end.
pub(super) const MOST_ON_A_STICK: usize = 10_000;

/// First fit by falling length, on the stock that costs least for the length it yields.
///
/// Serves every count exactly, whatever it is.
pub(super) fn first_fit(task: &Task, counts: &[u64]) -> Plan {
    let mut left = counts.to_vec();
    let mut plan = Plan::default();
    while left.iter().any(|n| *n > 0) {
        let filled = task
            .stocks
            .iter()
            .filter_map(|s| Column::of(task, falling(task, &left, s.room)));
        let Some(column) = filled.reduce(|a, b| if cheaper(task, &b, &a, &left) { b } else { a })
        else {
            return plan;
        };
        take(&mut plan, column, &mut left);
    }
    plan
}

/// Takes a column as often as it can be cut without a piece too many.
pub(super) fn take(plan: &mut Plan, column: Column, left: &mut [u64]) {
    let times = column.times(left);
    for (item, n) in column.counts() {
        left[item] -= n * times;
    }
    if times > 0 {
        plan.add(column, times);
    }
}

/// As many of the longest as fit, then of the next.
fn falling(task: &Task, left: &[u64], room: u64) -> Vec<usize> {
    let mut order = Vec::new();
    let mut at = 0;
    for item in (0..left.len()).rev() {
        for _ in 0..left[item] {
            let end = task.lay(at, item).end;
            if end > room || order.len() == MOST_ON_A_STICK {
                break;
            }
            order.push(item);
            at = end;
        }
    }
    order
}

/// Whether `a` costs less than `b` for the length of pieces on it; one that takes all that is left is measured by its price alone.
fn cheaper(task: &Task, a: &Column, b: &Column, left: &[u64]) -> bool {
    let whole: u64 = left.iter().sum();
    let price = |c: &Column| u128::from(task.stocks[c.stock].price);
    let length = |c: &Column| {
        c.order
            .iter()
            .map(|i| u128::from(task.items[*i].width))
            .sum::<u128>()
    };
    match (a.order.len() as u64 == whole, b.order.len() as u64 == whole) {
        (true, true) => price(a) < price(b),
        _ => price(a) * length(b) < price(b) * length(a),
    }
}

/// Fills stick by stick with what is worth most for its price, by these worths.
///
/// `None` if the work ran out.
pub(super) fn by_worth(
    task: &Task,
    pricer: &Pricer,
    worth: &[u64],
    counts: &[u64],
    meter: &mut Meter,
) -> Option<Plan> {
    let mut left = counts.to_vec();
    let mut plan = Plan::default();
    while left.iter().any(|n| *n > 0) {
        let mut best: Option<(u128, u128, Column)> = None;
        for (_, column) in pricer.within(task, worth, &left, meter)? {
            let Some(column) = filled(task, &column, &left) else {
                continue;
            };
            let value: u128 = column.order.iter().map(|i| u128::from(worth[*i])).sum();
            let price = u128::from(task.stocks[column.stock].price);
            if best.as_ref().is_none_or(|(v, p, _)| p * value > price * v) {
                best = Some((value, price, column));
            }
        }
        let Some((.., column)) = best else {
            return Some(joined(plan, first_fit(task, &left)));
        };
        take(&mut plan, column, &mut left);
    }
    Some(plan)
}

/// The column without pieces too many, and with whatever needed pieces still fit at its end.
pub(super) fn filled(task: &Task, column: &Column, left: &[u64]) -> Option<Column> {
    let clipped = column.clipped(task, left)?;
    let room = task.stocks[column.stock].room;
    let mut order = clipped.order;
    let mut rest = left.to_vec();
    for &item in &order {
        rest[item] -= 1;
    }
    let mut at = extent(task, &order);
    for item in (0..rest.len()).rev() {
        while rest[item] > 0 && task.lay(at, item).end <= room {
            at = task.lay(at, item).end;
            order.push(item);
            rest[item] -= 1;
        }
    }
    Column::of(task, order)
}

pub(super) fn joined(mut a: Plan, b: Plan) -> Plan {
    a.columns.extend(b.columns);
    a
}
