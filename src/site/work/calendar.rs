//! Working hours: which minutes are worked, and how far so much work reaches.

use super::network::Minutes;
use crate::design::Shift;
use std::collections::BTreeSet;

/// The minutes of a day.
pub const DAY: Minutes = 24 * 60;

/// No search goes farther than this many days: ten years.
const FAR: i64 = 3660;

/// A stretch of time, from a minute up to, not with, another.
pub type Stretch = (Minutes, Minutes);

/// Days and hours that are worked, in minutes since a midnight.
///
/// Invariant: `closed` is in order, and none of it overlaps.
#[derive(Clone, Debug, PartialEq)]
pub struct Calendar {
    /// Days of the week and hours of the day.
    shift: Shift,
    /// The day of the week of day 0, Monday 0.
    weekday: i64,
    /// Days on which nobody works, by number.
    off: BTreeSet<i64>,
    /// What is not fit for work.
    closed: Vec<Stretch>,
}

impl Calendar {
    /// Such a calendar; `weekday` is that of day 0, Monday 0.
    pub fn new(shift: &Shift, weekday: usize, off: impl IntoIterator<Item = i64>) -> Self {
        Self {
            shift: shift.clone(),
            weekday: i64::try_from(weekday % 7).unwrap_or(0),
            off: off.into_iter().collect(),
            closed: Vec::new(),
        }
    }

    /// The same without some stretches.
    #[must_use]
    pub fn without(mut self, closed: impl IntoIterator<Item = Stretch>) -> Self {
        let mut closed: Vec<Stretch> = closed.into_iter().filter(|c| c.0 < c.1).collect();
        closed.sort_unstable();
        self.closed.clear();
        for next in closed {
            match self.closed.last_mut() {
                Some(last) if next.0 <= last.1 => last.1 = last.1.max(next.1),
                _ => self.closed.push(next),
            }
        }
        self
    }

    /// The hours of a day that is worked, unfit stretches counted in; `None` for other days.
    pub fn hours(&self, day: i64) -> Option<Stretch> {
        let weekday = usize::try_from((self.weekday + day).rem_euclid(7)).unwrap_or(0);
        let is_worked = self.shift.days[weekday % 7] && !self.off.contains(&day);
        let midnight = day * DAY;
        is_worked.then_some((midnight + self.shift.from, midnight + self.shift.to))
    }

    /// True where work goes on through all nights.
    pub fn never_closes(&self) -> bool {
        let shift = &self.shift;
        shift.days == [true; 7] && shift.from == 0 && shift.to == DAY && self.off.is_empty()
    }

    /// The stretches of a day that are worked.
    fn stretches(&self, day: i64) -> Vec<Stretch> {
        let Some((mut from, to)) = self.hours(day) else {
            return Vec::new();
        };
        let first = self.closed.partition_point(|c| c.1 <= from);
        let mut open = Vec::new();
        for closed in self.closed[first..].iter().take_while(|c| c.0 < to) {
            if closed.0 > from {
                open.push((from, closed.0));
            }
            from = from.max(closed.1);
        }
        if from < to {
            open.push((from, to));
        }
        open
    }

    /// The first minute from `at` on that is worked; `None` when there is none for ten years.
    pub fn open_from(&self, at: Minutes) -> Option<Minutes> {
        let day = at.div_euclid(DAY);
        (day..day + FAR).find_map(|day| {
            let mut open = self.stretches(day).into_iter();
            open.find(|s| s.1 > at).map(|s| s.0.max(at))
        })
    }

    /// The stretches in which so much work is done that begins at `at` or as soon after it as there is work; a stretch
    /// without length for no work at all. `None` when it is not done in ten years.
    pub fn work(&self, at: Minutes, work: Minutes) -> Option<Vec<Stretch>> {
        let begin = self.open_from(at)?;
        if work <= 0 {
            return Some(vec![(begin, begin)]);
        }
        let (mut left, mut done): (_, Vec<Stretch>) = (work, Vec::new());
        let day = begin.div_euclid(DAY);
        for day in day..day + FAR {
            for (from, to) in self.stretches(day) {
                let from = from.max(begin);
                if from >= to {
                    continue;
                }
                let end = to.min(from + left);
                // Nights that are worked through part nothing.
                match done.last_mut() {
                    Some((_, last)) if *last == from => *last = end,
                    _ => done.push((from, end)),
                }
                left -= end - from;
                if left == 0 {
                    return Some(done);
                }
            }
        }
        None
    }

    /// The same in one stretch, where a day is long enough for it: what is begun is finished the same day.
    pub fn work_at_once(&self, at: Minutes, work: Minutes) -> Option<Vec<Stretch>> {
        let mut done = self.work(at, work)?;
        if work > self.shift.to - self.shift.from {
            return Some(done);
        }
        for _ in 0..FAR {
            match done.get(1) {
                Some(next) => done = self.work(next.0, work)?,
                None => return Some(done),
            }
        }
        None
    }

    /// The latest minute at which work in one stretch can begin that must be done by `end`.
    pub fn begin_at_once_by(&self, end: Minutes, work: Minutes) -> Option<Minutes> {
        let mut late = self.begin_by(end, work)?;
        if work > self.shift.to - self.shift.from {
            return Some(late);
        }
        for _ in 0..FAR {
            match self.work(late, work)?.as_slice() {
                [first, _, ..] => late = self.begin_by(first.1, work)?,
                _ => return Some(late),
            }
        }
        None
    }

    /// The latest minute at which so much work can begin that must be done by `end`; `None` when it would be ten years.
    pub fn begin_by(&self, end: Minutes, work: Minutes) -> Option<Minutes> {
        let mut left = work.max(0);
        let day = end.div_euclid(DAY);
        for day in (day - FAR..=day).rev() {
            for (from, to) in self.stretches(day).into_iter().rev() {
                // What takes no time still begins in working hours, not at their end.
                let to = if work > 0 {
                    to.min(end)
                } else {
                    (to - 1).min(end)
                };
                if from > to || (from == to && left > 0) {
                    continue;
                }
                if left <= to - from {
                    return Some(to - left);
                }
                left -= to - from;
            }
        }
        None
    }

    /// How many minutes are worked from one moment to another; 0 where the second is not later.
    pub fn between(&self, from: Minutes, to: Minutes) -> Minutes {
        let days = from.div_euclid(DAY)..=to.div_euclid(DAY).min(from.div_euclid(DAY) + FAR);
        let open = days.flat_map(|day| self.stretches(day));
        open.map(|s| (s.1.min(to) - s.0.max(from)).max(0)).sum()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const HOUR: Minutes = 60;

    /// Day 0 is a Saturday; weekends from 8 to 17, day 7 off.
    fn weekends() -> Calendar {
        let mut days = [false; 7];
        days[5] = true;
        days[6] = true;
        let shift = Shift {
            days,
            from: 8 * HOUR,
            to: 17 * HOUR,
        };
        Calendar::new(&shift, 5, [7])
    }

    #[test]
    fn work_goes_over_nights_and_weeks() {
        let calendar = weekends();
        // From Saturday noon: 5 h that day, 9 h on Sunday, then the Saturday after is off: 1 h on Sunday, day 8.
        let work = calendar.work(12 * HOUR, 15 * HOUR).unwrap();
        let day = |d: i64, h: i64| d * DAY + h * HOUR;
        assert_eq!(
            work,
            [
                (day(0, 12), day(0, 17)),
                (day(1, 8), day(1, 17)),
                (day(8, 8), day(8, 9))
            ]
        );
        assert_eq!(calendar.begin_by(day(8, 9), 15 * HOUR), Some(day(0, 12)));
        assert_eq!(calendar.open_from(day(1, 17)), Some(day(8, 8)));
        assert_eq!(calendar.between(day(0, 12), day(8, 9)), 15 * HOUR);
    }

    #[test]
    fn what_is_not_fit_is_left_out() {
        let day = |d: i64, h: i64| d * DAY + h * HOUR;
        let calendar = weekends().without([(day(0, 9), day(0, 11)), (day(0, 10), day(0, 12))]);
        let work = calendar.work(0, 2 * HOUR).unwrap();
        assert_eq!(work, [(day(0, 8), day(0, 9)), (day(0, 12), day(0, 13))]);
        assert_eq!(calendar.begin_by(day(0, 12), HOUR), Some(day(0, 8)));
    }

    #[test]
    fn a_crew_that_never_works_is_never_done() {
        let shift = Shift {
            days: [false; 7],
            from: 0,
            to: DAY,
        };
        let never = Calendar::new(&shift, 0, []);
        assert_eq!((never.open_from(0), never.work(0, 1)), (None, None));
        assert_eq!(never.begin_by(0, 1), None);
    }

    proptest! {
        #[test]
        fn work_is_as_long_as_it_is_and_can_be_reckoned_back(at in 0_i64..40 * DAY, work in 1_i64..4000, closed in 0_i64..20 * DAY) {
            let calendar = weekends().without([(closed, closed + 5 * HOUR)]);
            let done = calendar.work(at, work).unwrap();
            prop_assert_eq!(done.iter().map(|s| s.1 - s.0).sum::<i64>(), work);
            let (begin, end) = (done[0].0, done[done.len() - 1].1);
            prop_assert!(begin >= at && calendar.between(begin, end) == work);
            // The latest begin for this end is this begin.
            prop_assert_eq!(calendar.begin_by(end, work), Some(begin));
        }
    }
}
