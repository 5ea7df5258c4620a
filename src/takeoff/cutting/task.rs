//! The problem made ready: pieces of one length together, sticks that can be of use, one whole number for what each costs.

use std::collections::BTreeMap;

use super::problem::{Problem, Stick};

/// Pieces of one length and kind.
#[derive(Clone, Debug)]
pub(super) struct Item {
    /// Length of a piece.
    pub length: u64,
    /// The same with the cut after it.
    pub width: u64,
    /// How many are needed.
    pub count: u64,
    /// Whether its foot lies on the pitch.
    pub aligned: bool,
    /// The demands it stands for, and the count of each.
    pub demands: Vec<(usize, u64)>,
}

/// A stick that can be of use.
#[derive(Clone, Debug)]
pub(super) struct Stock {
    /// Room for pieces, each with a cut after it: the length without the trim, and one cut more.
    pub room: u64,
    /// What the search pays for one: see [`Task::weigh`].
    pub price: u64,
    /// What one costs, in cents.
    pub cost: u64,
    /// Which of the problem's sticks it is.
    pub stick: usize,
}

/// What is to be cut from what.
///
/// Items run from the shortest to the longest; stocks from the cheapest to the dearest, and each is longer than the one before.
#[derive(Clone, Debug)]
pub(super) struct Task {
    pub items: Vec<Item>,
    pub stocks: Vec<Stock>,
    pub kerf: u64,
    /// The pitch, if anything is aligned to it.
    pub pitch: Option<u64>,
    /// Demands that no stick is long enough for.
    pub too_long: Vec<usize>,
    /// How prices are read back as cents.
    pub scale: Scale,
}

/// How the search's prices are made of cents: `price = floor(cost / (unit · 2^shift)) · weight + (1 if weight > 1)`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Scale {
    /// The largest whole number that divides every cost.
    pub unit: u64,
    /// Bits dropped from costs beyond all measure, rounding down.
    pub shift: u32,
    /// How many sticks weigh as much as one unit; 1 if the number of sticks is not reckoned with.
    pub weight: u64,
    /// Whether equal prices mean equal costs and equal numbers of sticks.
    pub exact: bool,
}

impl Task {
    pub(super) fn new(problem: &Problem) -> Task {
        let stocks = useful(problem);
        let longest = stocks
            .last()
            .map_or(0, |s| s.room - u64::from(problem.kerf));
        let pitch = problem.pitch.filter(|p| *p > 0).map(u64::from);
        let mut too_long = Vec::new();
        let mut items: BTreeMap<(u64, bool), Item> = BTreeMap::new();
        for (index, demand) in problem.demands.iter().enumerate() {
            let length = u64::from(demand.length);
            if demand.count == 0 || length == 0 {
                continue;
            }
            if length > longest {
                too_long.push(index);
                continue;
            }
            let aligned = demand.aligned && pitch.is_some();
            let width = length + u64::from(problem.kerf);
            let empty = Item {
                length,
                width,
                count: 0,
                aligned,
                demands: Vec::new(),
            };
            let item = items.entry((length, aligned)).or_insert(empty);
            item.count += u64::from(demand.count);
            item.demands.push((index, demand.count.into()));
        }
        let items: Vec<Item> = items.into_values().collect();
        let pitch = pitch.filter(|_| items.iter().any(|i| i.aligned));
        let scale = Scale {
            unit: 1,
            shift: 0,
            weight: 1,
            exact: false,
        };
        let mut task = Task {
            items,
            stocks,
            kerf: problem.kerf.into(),
            pitch,
            too_long,
            scale,
        };
        task.weigh(u64::MAX);
        task
    }

    /// Sets the prices, given that no answer worth looking at has more than `most` sticks.
    ///
    /// Where all sticks cost the same, the price of each is 1. Else it is its cost times a weight above `most`, and 1 more,
    /// so that the least sum of prices is the least cost, and among equal costs the fewest sticks.
    pub(super) fn weigh(&mut self, most: u64) {
        const ROOM: u64 = 1 << 50;
        let unit = self
            .stocks
            .iter()
            .fold(0, |unit, s| gcd(unit, s.cost))
            .max(1);
        let dearest = self.stocks.iter().map(|s| s.cost / unit).max().unwrap_or(0);
        let same = self.stocks.len() <= 1;
        let shift = (64 - dearest.leading_zeros()).saturating_sub(31);
        let weight = most.saturating_add(1);
        let exact = !same
            && shift == 0
            && (dearest + 1)
                .checked_mul(weight)
                .and_then(|p| p.checked_mul(most))
                .is_some_and(|p| p < ROOM);
        let weight = if exact { weight } else { 1 };
        self.scale = Scale {
            unit,
            shift,
            weight,
            exact: exact || same,
        };
        for stock in &mut self.stocks {
            let whole = (stock.cost / unit) >> shift;
            stock.price = match (same, exact) {
                (true, _) => 1,
                (_, true) => whole * weight + 1,
                _ => whole,
            };
        }
    }

    /// The least cents that a sum of prices can mean.
    pub(super) fn cents(&self, price: u128) -> u128 {
        if let [only] = &self.stocks[..] {
            return price * u128::from(only.cost);
        }
        ((price / u128::from(self.scale.weight)) << self.scale.shift) * u128::from(self.scale.unit)
    }

    /// The sum of all widths.
    pub(super) fn width(&self) -> u128 {
        self.items
            .iter()
            .map(|i| u128::from(i.width) * u128::from(i.count))
            .sum()
    }

    /// How many of each item are needed.
    pub(super) fn counts(&self) -> Vec<u64> {
        self.items.iter().map(|i| i.count).collect()
    }

    /// The room of the longest stick.
    pub(super) fn longest(&self) -> u64 {
        self.stocks.last().map_or(0, |s| s.room)
    }

    /// The cheapest stock that a layout of this width fits.
    pub(super) fn cheapest(&self, width: u64) -> Option<usize> {
        self.stocks.iter().position(|s| s.room >= width)
    }

    /// Where a piece ends, with the cut after it, if it is laid as early as it goes from `from` on; where it starts, and
    /// whether its foot is its far end.
    ///
    /// Laying earlier never ends later, so the earliest of each piece is enough.
    pub(super) fn lay(&self, from: u64, item: usize) -> Lay {
        let Item {
            length,
            width,
            aligned,
            ..
        } = self.items[item];
        let Some(pitch) = self.pitch.filter(|_| aligned) else {
            return Lay {
                start: from,
                end: from + width,
                reversed: false,
            };
        };
        let forward = from.next_multiple_of(pitch);
        let foot = (from + length).next_multiple_of(pitch);
        if foot < forward + length {
            Lay {
                start: foot - length,
                end: foot + self.kerf,
                reversed: true,
            }
        } else {
            Lay {
                start: forward,
                end: forward + width,
                reversed: false,
            }
        }
    }
}

/// A piece laid on a stick.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Lay {
    pub start: u64,
    /// With the cut after it.
    pub end: u64,
    pub reversed: bool,
}

/// The sticks of which none is as long for less money, or for the same.
fn useful(problem: &Problem) -> Vec<Stock> {
    let mut order: Vec<(usize, &Stick)> = problem.sticks.iter().enumerate().collect();
    order.sort_by_key(|(index, s)| (s.cost, u32::MAX - s.length, *index));
    let mut longest = problem.trim;
    let mut stocks = Vec::new();
    for (stick, s) in order {
        if s.length > longest {
            longest = s.length;
            let room = u64::from(s.length - problem.trim) + u64::from(problem.kerf);
            stocks.push(Stock {
                room,
                price: 1,
                cost: s.cost,
                stick,
            });
        }
    }
    stocks
}

fn gcd(a: u64, b: u64) -> u64 {
    if b == 0 { a } else { gcd(b, a % b) }
}
