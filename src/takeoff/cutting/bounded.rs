//! A good filling of a stick where some pieces have their foot on the pitch, and no piece is taken more often than it is needed.
//!
//! At every place only the path worth most is followed, so a better filling can be missed: this finds answers and proves nothing.

use super::align::{BEYOND, Places};
use super::column::Column;
use super::meter::Meter;
use super::task::{Stock, Task};

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
    let wanted: Vec<usize> = (0..worth.len()).filter(|i| left[*i] > 0).collect();
    let mut paths = Paths::new(places.at.len());
    let mut taken = vec![0_u64; worth.len()];
    let mut leader = None;
    let mut leaders = Vec::with_capacity(places.at.len());
    meter.spend(places.at.len() as u64 * 2)?;
    for place in 0..places.at.len() {
        // An end further on that is worth no more leads nowhere better.
        let record = leader.and_then(|l| paths.worth(l));
        if paths.worth(place) > record {
            leader = Some(place);
            meter.spend(40 + 3 * wanted.len() as u64)?;
            paths.count(place, &mut taken);
            let row = places.row(place, worth.len());
            for &item in wanted.iter().filter(|i| taken[**i] < left[**i]) {
                paths.extend(place, (item, worth[item]), row[item]);
            }
        }
        leaders.push(leader.unwrap_or(0));
    }
    let fill = |(stock, s): (usize, &Stock)| {
        let last = leaders[places.at.partition_point(|a| *a <= s.room) - 1];
        let mut order: Vec<usize> = paths.items(last).collect();
        order.reverse();
        (paths.worth(last).unwrap_or(0), Column { stock, order })
    };
    Some(task.stocks.iter().enumerate().map(fill).collect())
}

/// The best path to every place that is reached.
struct Paths {
    steps: Vec<Option<Step>>,
}

impl Paths {
    fn new(places: usize) -> Paths {
        let mut steps = vec![None; places];
        steps[0] = Some(Step {
            worth: 0,
            from: 0,
            item: 0,
        });
        Paths { steps }
    }

    fn worth(&self, place: usize) -> Option<u64> {
        self.steps[place].map(|s| s.worth)
    }

    /// Takes one more piece behind a place if that is the best way to where it ends.
    fn extend(&mut self, place: usize, (item, worth): (usize, u64), end: u32) {
        let Some(worth) = self
            .worth(place)
            .filter(|_| end != BEYOND)
            .map(|w| w + worth)
        else {
            return;
        };
        let there = &mut self.steps[end as usize];
        if there.is_none_or(|t| worth > t.worth) {
            *there = Some(Step {
                worth,
                from: place as u32,
                item: item as u32,
            });
        }
    }

    /// The items on the way to a place, the last first.
    fn items(&self, place: usize) -> impl Iterator<Item = usize> {
        let mut place = place;
        std::iter::from_fn(move || {
            let step = self.steps[place].filter(|_| place > 0)?;
            place = step.from as usize;
            Some(step.item as usize)
        })
    }

    /// How often each item is on the way to a place.
    fn count(&self, place: usize, taken: &mut [u64]) {
        taken.fill(0);
        self.items(place).for_each(|item| taken[item] += 1);
    }
}
