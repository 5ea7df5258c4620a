//! When the pour begins: in an hour that is fit, early enough that the slab is finished the same day.

use super::calendar::{Calendar, DAY, Stretch};
use super::network::Minutes;
use std::collections::BTreeSet;

/// How far ahead a day for the pour is sought.
const FAR: i64 = 3660;
const HOUR: Minutes = 60;
/// Beginnings are tried every quarter of an hour.
const STEP: Minutes = 15;

/// What the beginning of the pour must suit.
pub struct PourDay<'a> {
    /// The crew's days and hours.
    pub crew: &'a Calendar,
    /// From when to when there is a forecast.
    pub covered: Option<Stretch>,
    /// The beginnings of its hours in which concrete may be placed.
    pub fit: &'a BTreeSet<Minutes>,
    /// What is checked straight before it, in working hours too where it begins in them.
    pub lead: Minutes,
    /// How long placing takes.
    pub placing: Minutes,
    /// From the beginning of placing to the end of trowelling, for a beginning.
    pub block: &'a dyn Fn(Minutes) -> Minutes,
    /// True when there are hands for a beginning.
    pub is_free: &'a dyn Fn(Minutes) -> bool,
}

impl PourDay<'_> {
    /// The first beginning that suits: within working hours where one does, else before them, as late as one does.
    ///
    /// Where there is no forecast any working hour will do that leaves time to finish the slab; a slab that takes longer than a
    /// day begins with the day.
    pub fn begin(&self, ready: Minutes) -> Option<Minutes> {
        let day = ready.div_euclid(DAY);
        (day..day + FAR).find_map(|day| self.on(day, ready))
    }

    fn on(&self, day: i64, ready: Minutes) -> Option<Minutes> {
        let (open, close) = self.crew.hours(day)?;
        let always = self.crew.never_closes();
        let opening = if always { open } else { open + self.lead };
        let first = opening.max(ready);
        let quarters = (first.div_euclid(STEP) + 1..=close.div_euclid(STEP)).map(|q| q * STEP);
        let by_day = std::iter::once(first).chain(quarters);
        let in_time = |t: &Minutes| {
            let block = (self.block)(*t);
            *t < close
                && (always || t + block <= close || (*t == opening && block > close - opening))
        };
        let mut by_day = by_day.filter(|t| self.is_fit(*t, true));
        if let Some(found) = by_day.find(|t| in_time(t) && (self.is_free)(*t)) {
            return Some(found);
        }
        let before = (1..=24).map(|h| open - h * HOUR);
        let mut before = before.take_while(|t| *t >= day * DAY && *t >= ready);
        before.find(|t| self.is_fit(*t, false) && in_time(t) && (self.is_free)(*t))
    }

    /// True when all hours of placing are fit; `unknown` is what is said of hours without a forecast.
    fn is_fit(&self, begin: Minutes, unknown: bool) -> bool {
        let last = begin + self.placing.max(1) - 1;
        let mut hours = (begin.div_euclid(HOUR)..=last.div_euclid(HOUR)).map(|h| h * HOUR);
        hours.all(|h| {
            let covered = self.covered.is_some_and(|c| c.0 <= h && h < c.1);
            if covered {
                self.fit.contains(&h)
            } else {
                unknown
            }
        })
    }
}
