//! A good filling of a stick where some pieces have their foot on the pitch, and no piece is taken more often than it is needed.
//!
//! At every place only the path worth most is followed, so a better filling can be missed: this finds answers and proves nothing.

use super::align::{BEYOND, Places};
use super::column::Column;
use super::meter::Meter;
use super::task::Task;

/// The best path to a place.
#[derive(Clone, Copy, Debug)]
struct Step {
    worth: u64,
    from: u32,
    item: u32,
}

/// A filling of every stock, and what it is worth; `None` if the work ran out.
pub(super) fn within(
    task: &Task,
    places: &Places,
    (worth, left): (&[u64], &[u64]),
    meter: &mut Meter,
) -> Option<Vec<(u64, Column)>> {
    let items = worth.len();
    let wanted: Vec<usize> = (0..items)
        .filter(|i| left[*i] > 0 && worth[*i] > 0)
        .collect();
    let mut steps: Vec<Option<Step>> = vec![None; places.at.len()];
    let mut taken = vec![0_u64; items];
    let mut best = 0;
    let mut record = None;
    let mut leaders = Vec::with_capacity(places.at.len());
    meter.spend(places.at.len() as u64 * 2)?;
    steps[0] = Some(Step {
        worth: 0,
        from: 0,
        item: 0,
    });
    for place in 0..places.at.len() {
        if let Some(step) = steps[place].filter(|s| record.is_none_or(|r| s.worth > r)) {
            record = Some(step.worth);
            best = place;
            count(&steps, place, &mut taken);
            meter.spend(40 + 3 * wanted.len() as u64)?;
            let row = places.row(place, items);
            for &item in wanted.iter().filter(|i| taken[**i] < left[**i]) {
                let to = row[item];
                if to == BEYOND {
                    continue;
                }
                let next = Step {
                    worth: step.worth + worth[item],
                    from: place as u32,
                    item: item as u32,
                };
                let there = &mut steps[to as usize];
                if there.is_none_or(|t| next.worth > t.worth) {
                    *there = Some(next);
                }
            }
        }
        leaders.push(best);
    }
    let fill = |(stock, s): (usize, &super::task::Stock)| {
        let last = leaders[places.at.partition_point(|a| *a <= s.room) - 1];
        let worth = steps[last].map_or(0, |s| s.worth);
        let mut order: Vec<usize> = path(&steps, last).collect();
        order.reverse();
        (worth, Column { stock, order })
    };
    Some(task.stocks.iter().enumerate().map(fill).collect())
}

/// The items on the way to a place, the last first.
fn path(steps: &[Option<Step>], place: usize) -> impl Iterator<Item = usize> {
    let mut place = place;
    std::iter::from_fn(move || {
        let step = steps[place].filter(|_| place > 0)?;
        place = step.from as usize;
        Some(step.item as usize)
    })
}

/// How often each item is on the way to a place.
fn count(steps: &[Option<Step>], place: usize, taken: &mut [u64]) {
    taken.fill(0);
    path(steps, place).for_each(|item| taken[item] += 1);
}
