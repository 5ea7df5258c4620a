//! The best filling of a stick where some pieces have their foot on the pitch: a path over the places at which a piece can end.
//!
//! Every piece is laid as early as it goes, so the order of the pieces says where they lie, and the places are few.
//! A piece may be taken more often here than it is needed: the bound is then a little lower, never wrong.

use std::collections::{BTreeMap, BTreeSet};

use super::column::Column;
use super::meter::Meter;
use super::task::Task;

/// The most arcs that are kept.
const ARCS: usize = 3_000_000;
/// No place, for the room ends before it.
pub(super) const BEYOND: u32 = u32::MAX;

/// The places at which a piece, with its cut, can end, and where each next piece would end.
#[derive(Debug)]
pub(super) struct Places {
    pub(super) at: Vec<u64>,
    /// One row for each place, one entry for each item.
    next: Vec<u32>,
}

impl Places {
    /// `None` if they are too many.
    pub(super) fn new(task: &Task) -> Option<Places> {
        let items = task.items.len();
        let longest = task.longest();
        let mut open = BTreeSet::from([0]);
        let mut at = Vec::new();
        while let Some(place) = open.pop_first() {
            at.push(place);
            if at.len().checked_mul(items)? > ARCS {
                return None;
            }
            open.extend(
                (0..items)
                    .map(|i| task.lay(place, i).end)
                    .filter(|e| *e <= longest),
            );
        }
        let index_of = |end: u64| at.binary_search(&end).map_or(BEYOND, |i| i as u32);
        let next = at
            .iter()
            .flat_map(|&from| (0..items).map(move |i| task.lay(from, i).end))
            .map(index_of)
            .collect();
        Some(Places { at, next })
    }

    pub(super) fn row(&self, place: usize, items: usize) -> &[u32] {
        &self.next[place * items..(place + 1) * items]
    }

    /// The best filling of every stock, and what it is worth.
    pub(super) fn best(
        &self,
        task: &Task,
        worth: &[u64],
        meter: &mut Meter,
    ) -> Option<Vec<(u64, Column)>> {
        let items = worth.len();
        let mut value: Vec<Option<(u64, u32, usize)>> = vec![None; self.at.len()];
        value[0] = Some((0, 0, 0));
        let mut leading = 0;
        let mut record = None;
        let mut leaders = Vec::with_capacity(self.at.len());
        for place in 0..self.at.len() {
            if let Some((worth_here, ..)) = value[place].filter(|v| record.is_none_or(|r| v.0 > r))
            {
                record = Some(worth_here);
                leading = place;
                meter.spend(2 * items as u64)?;
                for (item, &to) in self.row(place, items).iter().enumerate() {
                    if to != BEYOND && worth[item] > 0 {
                        let here = worth_here + worth[item];
                        let there = &mut value[to as usize];
                        if there.is_none_or(|t| here > t.0) {
                            *there = Some((here, place as u32, item));
                        }
                    }
                }
            }
            leaders.push(leading);
        }
        let fill = |(stock, s): (usize, &super::task::Stock)| {
            let last = leaders[self.at.partition_point(|a| *a <= s.room) - 1];
            let mut order = Vec::new();
            let mut place = last;
            while let Some((_, from, item)) = value[place].filter(|_| place > 0) {
                order.push(item);
                place = from as usize;
            }
            order.reverse();
            (value[last].map_or(0, |v| v.0), Column { stock, order })
        };
        Some(task.stocks.iter().enumerate().map(fill).collect())
    }

    /// What can still be added behind every place, at best, within this room.
    fn ahead(&self, worth: &[u64], room: u64) -> Vec<u64> {
        let items = worth.len();
        let places = self.at.partition_point(|a| *a <= room);
        let mut ahead = vec![0; places];
        for place in (0..places).rev() {
            let best = self
                .row(place, items)
                .iter()
                .zip(worth)
                .filter(|(to, _)| (**to as usize) < places);
            ahead[place] = best
                .map(|(to, w)| ahead[*to as usize] + w)
                .max()
                .unwrap_or(0);
        }
        ahead
    }

    /// All fillings of one stock that are worth `least` at least, to which no piece can be added at the end, and which do
    /// not fit a cheaper stock. `None` if there are more than `most`, or the work ran out.
    pub(super) fn all(
        &self,
        task: &Task,
        (worth, counts): (&[u64], &[u64]),
        (stock, least): (usize, u64),
        most: usize,
        meter: &mut Meter,
    ) -> Option<Vec<Column>> {
        let room = task.stocks[stock].room;
        meter.spend(2 * self.next.len() as u64)?;
        let shorter = stock.checked_sub(1).map_or(0, |s| task.stocks[s].room);
        let mut search = Search {
            places: self,
            worth,
            ahead: self.ahead(worth, room),
            left: counts.to_vec(),
            order: Vec::new(),
            seen: BTreeMap::new(),
            found: BTreeMap::new(),
            shorter,
            most,
        };
        search.descend(0, least, meter)?;
        Some(
            search
                .found
                .into_values()
                .map(|order| Column { stock, order })
                .collect(),
        )
    }
}

struct Search<'a> {
    places: &'a Places,
    worth: &'a [u64],
    ahead: Vec<u64>,
    left: Vec<u64>,
    order: Vec<usize>,
    /// The earliest end of each choice of pieces so far.
    seen: BTreeMap<Vec<usize>, usize>,
    found: BTreeMap<Vec<usize>, Vec<usize>>,
    shorter: u64,
    most: usize,
}

impl Search<'_> {
    fn descend(&mut self, place: usize, least: u64, meter: &mut Meter) -> Option<()> {
        if self.ahead[place] < least {
            return Some(());
        }
        meter.spend(40 + 20 * self.order.len() as u64)?;
        let mut choice = self.order.clone();
        choice.sort_unstable();
        if self
            .seen
            .get(&choice)
            .is_some_and(|earliest| *earliest <= place)
        {
            return Some(());
        }
        self.seen.insert(choice.clone(), place);
        let items = self.worth.len();
        // Orders of one choice that end later are left out: laying on from an earlier end is never worse.
        let mut full = true;
        for item in (0..items).rev() {
            let to = self.places.row(place, items)[item] as usize;
            if to >= self.ahead.len() || self.left[item] == 0 {
                continue;
            }
            full = false;
            self.left[item] -= 1;
            self.order.push(item);
            let result = self.descend(to, least.saturating_sub(self.worth[item]), meter);
            self.order.pop();
            self.left[item] += 1;
            result?;
        }
        if full && self.places.at[place] > self.shorter && least == 0 {
            self.found.insert(choice, self.order.clone());
        }
        (self.found.len() <= self.most).then_some(())
    }
}
