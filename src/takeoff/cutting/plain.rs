//! The best filling of a stick where nothing is aligned: a knapsack in which no piece is taken more often than it is needed.
//!
//! Exact at any length of stick: instead of a table over all steps it keeps, for every item, only the widths at which more room is worth more.

use super::column::Column;
use super::meter::Meter;
use super::task::Task;

/// What the best choice is worth, by the room there is: widths and worths both rise.
type Front = Vec<(u64, u64)>;

/// For every item, the front of it and of all longer ones.
pub(super) struct Fronts<'a> {
    task: &'a Task,
    worth: &'a [u64],
    counts: &'a [u64],
    rows: Vec<Front>,
}

impl<'a> Fronts<'a> {
    /// `None` if the work ran out.
    pub(super) fn new(
        task: &'a Task,
        worth: &'a [u64],
        counts: &'a [u64],
        meter: &mut Meter,
    ) -> Option<Fronts<'a>> {
        let longest = task.longest();
        let mut row: Front = vec![(0, 0)];
        let mut rows = vec![row.clone()];
        for (index, item) in task.items.iter().enumerate().rev() {
            let mut left = counts[index].min(longest / item.width);
            let mut step = 1;
            while left > 0 && worth[index] > 0 {
                let copies = step.min(left);
                row = merged(&row, copies * item.width, copies * worth[index], longest);
                meter.spend(5 * row.len() as u64)?;
                left -= copies;
                step *= 2;
            }
            rows.push(row.clone());
            meter.spend(row.len() as u64)?;
        }
        rows.reverse();
        Some(Fronts {
            task,
            worth,
            counts,
            rows,
        })
    }

    /// The best filling of one stock, and what it is worth.
    pub(super) fn best(&self, stock: usize) -> (u64, Column) {
        let mut room = self.task.stocks[stock].room;
        let value = worth_of(&self.rows[0], room);
        let mut order = Vec::new();
        let mut rest = value;
        for (index, item) in self.task.items.iter().enumerate() {
            while worth_of(&self.rows[index + 1], room) != rest {
                order.push(index);
                room -= item.width;
                rest -= self.worth[index];
            }
        }
        order.reverse();
        (value, Column { stock, order })
    }

    /// All fillings of one stock that are worth `least` at least, to which no piece can be added, and which do not fit a
    /// cheaper stock. `None` if there are more than `most`, or the work ran out.
    pub(super) fn all(
        &self,
        stock: usize,
        least: u64,
        most: usize,
        meter: &mut Meter,
    ) -> Option<Vec<Column>> {
        let mut search = Search {
            fronts: self,
            stock,
            most,
            taken: Vec::new(),
            found: Vec::new(),
        };
        search.descend(0, self.task.stocks[stock].room, least, u64::MAX, meter)?;
        Some(search.found)
    }
}

struct Search<'a> {
    fronts: &'a Fronts<'a>,
    stock: usize,
    most: usize,
    taken: Vec<usize>,
    found: Vec<Column>,
}

impl Search<'_> {
    /// Chooses how many of one item; `spare` is the width of the shortest piece that was left though it is needed.
    fn descend(
        &mut self,
        index: usize,
        room: u64,
        least: u64,
        spare: u64,
        meter: &mut Meter,
    ) -> Option<()> {
        meter.spend(8)?;
        let Fronts {
            task,
            worth,
            counts,
            rows,
        } = self.fronts;
        if worth_of(&rows[index], room) < least {
            return Some(());
        }
        let Some(item) = task.items.get(index) else {
            return self.keep(room, spare);
        };
        let before = self.taken.len();
        let most = counts[index].min(room / item.width);
        let mut result = Some(());
        for n in 0..=most {
            let spare = if n < counts[index] {
                spare.min(item.width)
            } else {
                spare
            };
            let left = room - n * item.width;
            result = self.descend(
                index + 1,
                left,
                least.saturating_sub(n * worth[index]),
                spare,
                meter,
            );
            if result.is_none() {
                break;
            }
            self.taken.push(index);
        }
        self.taken.truncate(before);
        result
    }

    fn keep(&mut self, room: u64, spare: u64) -> Option<()> {
        let stocks = &self.fronts.task.stocks;
        let used = stocks[self.stock].room - room;
        let cheaper = self
            .stock
            .checked_sub(1)
            .is_some_and(|s| stocks[s].room >= used);
        if room >= spare || cheaper || self.taken.is_empty() {
            return Some(());
        }
        if self.found.len() == self.most {
            return None;
        }
        let order = self.taken.iter().rev().copied().collect();
        self.found.push(Column {
            stock: self.stock,
            order,
        });
        Some(())
    }
}

/// What the best choice within this room is worth.
fn worth_of(front: &Front, room: u64) -> u64 {
    let after = front.partition_point(|p| p.0 <= room);
    after.checked_sub(1).map_or(0, |i| front[i].1)
}

/// The front with or without something of this width and worth.
fn merged(front: &Front, width: u64, worth: u64, longest: u64) -> Front {
    let mut out = Vec::with_capacity(front.len() * 2);
    let mut with = front
        .iter()
        .map(|p| (p.0 + width, p.1 + worth))
        .take_while(|p| p.0 <= longest)
        .peekable();
    let mut without = front.iter().copied().peekable();
    let mut best = None;
    loop {
        let next = match (without.peek(), with.peek()) {
            (Some(a), Some(b)) if b.0 < a.0 => with.next(),
            (Some(_), _) => without.next(),
            (None, _) => with.next(),
        };
        let Some(point) = next else { return out };
        if best.is_none_or(|b| point.1 > b) {
            if out.last().is_some_and(|l: &(u64, u64)| l.0 == point.0) {
                out.pop();
            }
            best = Some(point.1);
            out.push(point);
        }
    }
}
