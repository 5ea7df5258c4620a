//! The days along the bars: days on which nobody works are narrow.

use super::values::WorkSheet;
use crate::units::Moment;
use std::collections::BTreeSet;

/// How wide a day is on which nobody works, as a part of one on which somebody does.
const IDLE: f64 = 0.3;
/// No more of the whole than this is for such days.
const MOST_IDLE: f64 = 0.35;
/// The longest span that is drawn, days.
const LONGEST: usize = 4000;

/// Days side by side.
#[derive(Clone, Debug)]
pub struct Axis {
    zero: Moment,
    /// The hours of a day that are drawn.
    hours: (f64, f64),
    /// The left edge of each day, and the right edge of the last one.
    edges: Vec<f64>,
    /// True for the days on which somebody works.
    worked: Vec<bool>,
}

impl Axis {
    /// The days of the work between two places on the sheet; `None` without dates.
    pub fn new(work: &WorkSheet, left: f64, right: f64) -> Option<Self> {
        let (first, last) = work.span?;
        let zero = first.midnight();
        let day = |m: Moment| (m.midnight().hours_since(zero) / 24.0).round() as usize;
        let count = (day(last) + 1).min(LONGEST);
        let bars = work.tasks.iter().filter_map(|t| t.bar.as_ref());
        let stretches: Vec<(Moment, Moment)> = bars.flat_map(|b| b.stretches.clone()).collect();
        let busy: BTreeSet<usize> = stretches
            .iter()
            .flat_map(|(a, b)| day(*a)..=day(*b))
            .collect();
        let worked: Vec<bool> = (0..count).map(|d| busy.contains(&d)).collect();
        let from = stretches
            .iter()
            .map(|s| s.0.hour_of_day())
            .fold(8.0, f64::min);
        let end = |m: Moment| match m.hour_of_day() {
            0.0 => 24.0,
            h => h,
        };
        let to = stretches.iter().map(|s| end(s.1)).fold(17.0, f64::max);
        Some(Self {
            zero,
            hours: (from, to),
            edges: edges(&worked, left, right),
            worked,
        })
    }

    /// Where a moment is.
    pub fn at(&self, moment: Moment) -> f64 {
        let hours = moment.hours_since(self.zero);
        let day =
            ((hours / 24.0).floor().max(0.0) as usize).min(self.worked.len().saturating_sub(1));
        let (from, to) = self.hours;
        let within = (hours - 24.0 * day as f64 - from) / (to - from);
        let edge = |d: usize| self.edges.get(d).copied().unwrap_or_default();
        edge(day) + (edge(day + 1) - edge(day)) * within.clamp(0.0, 1.0)
    }

    /// The days on which somebody works: left edge, width, midnight.
    pub fn days(&self) -> Vec<(f64, f64, Moment)> {
        let days = self.edges.windows(2).zip(&self.worked).enumerate();
        days.filter(|(_, (_, worked))| **worked)
            .map(|(d, (e, _))| (e[0], e[1] - e[0], self.zero.plus_hours(24.0 * d as f64)))
            .collect()
    }
}

fn edges(worked: &[bool], left: f64, right: f64) -> Vec<f64> {
    let busy = worked.iter().filter(|w| **w).count().max(1) as f64;
    let idle = worked.len() as f64 - busy;
    let narrow = if idle > 0.0 {
        IDLE.min(MOST_IDLE / (1.0 - MOST_IDLE) * busy / idle)
    } else {
        IDLE
    };
    let unit = (right - left) / (busy + narrow * idle.max(0.0));
    let mut edges = vec![left];
    let mut at = left;
    for is_worked in worked {
        at += if *is_worked { unit } else { unit * narrow };
        edges.push(at);
    }
    edges
}
