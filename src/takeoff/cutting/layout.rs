//! From the plan back to the problem: which demand each piece serves and where it lies.

use super::column::{Column, Plan, extent};
use super::problem::{Cut, Pattern};
use super::task::Task;

/// The patterns in a fixed order, each demand served exactly.
pub(super) fn patterns(task: &Task, plan: &Plan) -> Vec<Pattern> {
    let mut columns = plan.columns.clone();
    columns.sort_by_key(|(c, _)| {
        (
            std::cmp::Reverse(task.stocks[c.stock].room),
            extent(task, &c.order),
            c.clone(),
        )
    });
    columns.reverse();
    let mut queues = Queues::new(task);
    let mut patterns: Vec<Pattern> = Vec::new();
    for (column, times) in &columns {
        let mut times = *times;
        while times > 0 {
            let (demands, now) = queues.next(column, times.min(u64::from(u32::MAX)));
            times -= now;
            let pattern = pattern(task, column, &demands, now as u32);
            match patterns
                .last_mut()
                .filter(|p| p.stick == pattern.stick && p.cuts == pattern.cuts)
            {
                Some(last) if last.times.checked_add(pattern.times).is_some() => {
                    last.times += pattern.times;
                }
                _ => patterns.push(pattern),
            }
        }
    }
    patterns
}

fn pattern(task: &Task, column: &Column, demands: &[usize], times: u32) -> Pattern {
    let mut at = 0;
    let cuts = column.order.iter().zip(demands).map(|(&item, &demand)| {
        let lay = task.lay(at, item);
        at = lay.end;
        Cut {
            demand,
            start: lay.start as u32,
            reversed: lay.reversed,
        }
    });
    Pattern {
        stick: task.stocks[column.stock].stick,
        cuts: cuts.collect(),
        times,
    }
}

/// What of each demand is still to be served, for each item in the order of the demands.
struct Queues {
    of_item: Vec<Vec<(usize, u64)>>,
}

impl Queues {
    fn new(task: &Task) -> Queues {
        let of_item = task.items.iter().map(|item| item.demands.clone()).collect();
        Queues { of_item }
    }

    /// The demands that the column's pieces serve, and for how many sticks, up to `most`, that stays the same.
    fn next(&mut self, column: &Column, most: u64) -> (Vec<usize>, u64) {
        let needed = column.counts();
        let mixed = |&(item, n): &(usize, u64)| {
            self.of_item[item]
                .first()
                .map_or(1, |(_, left)| (left / n).max(1))
        };
        let times = needed.iter().map(mixed).min().unwrap_or(1).min(most);
        let mut given: Vec<std::vec::IntoIter<usize>> =
            vec![Vec::new().into_iter(); self.of_item.len()];
        for (item, n) in needed {
            given[item] = self.give(item, n, times).into_iter();
        }
        let demands = column
            .order
            .iter()
            .map(|&item| given[item].next().unwrap_or_default())
            .collect();
        (demands, times)
    }

    /// Takes `n` pieces for each of so many sticks: all from the first demand, or for one stick from as many as it needs.
    fn give(&mut self, item: usize, n: u64, times: u64) -> Vec<usize> {
        let queue = &mut self.of_item[item];
        let mut given = Vec::new();
        while given.len() < n as usize {
            let Some((demand, left)) = queue.first_mut() else {
                break;
            };
            let now = (n - given.len() as u64).min((*left / times).max(1));
            given.extend(std::iter::repeat_n(*demand, now as usize));
            *left = left.saturating_sub(now * times);
            if *left == 0 {
                queue.remove(0);
            }
        }
        given
    }
}
