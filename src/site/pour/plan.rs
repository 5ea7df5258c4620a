//! The pour planned: what is mixed, how long placing takes, the hours and the clock.

use super::clock::{Due, Step, course, due};
use super::hours::{Fitness, HourPlan, hours};
use super::limits::Limits;
use super::maturity::REFERENCE;
use super::slab::State;
use crate::catalog::Need;
use crate::design::Design;
use crate::plan::Plan;
use crate::units::{Mass, Moment, Temperature, TimeSpan, Volume};

/// What is mixed from bags, as the takeoff has it.
#[derive(Clone, Debug, PartialEq)]
pub struct Mixed {
    /// What it is.
    pub need: Need,
    /// What the shop calls the bag.
    pub bag: String,
    /// What a bag weighs.
    pub weight: Option<Mass>,
    /// How much is needed, in words.
    pub needed: String,
    /// Mixed volume of all bags needed, where the bag says what it yields.
    pub volume: Option<Volume>,
    /// Bags needed, not rounded.
    pub exact: f64,
    /// Bags needed, whole.
    pub net: u32,
    /// Bags bought, spare included.
    pub count: u32,
    /// Bags in one batch.
    pub bags_a_batch: f64,
    /// The batch in words, such as `2 bags` or `1/2 bag`.
    pub batch: String,
    /// Water in one batch.
    pub water: Option<Volume>,
    /// How high it stands in the bucket, in words.
    pub mark: String,
    /// Batches; the last may be smaller.
    pub batches: u32,
}

/// How the slab is placed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placing {
    /// Batches in all.
    pub batches: u32,
    /// One after the other on each mixer.
    pub rounds: u32,
    /// From the first batch to the last being placed.
    pub time: TimeSpan,
    /// Mixed volume placed an hour.
    pub rate: Option<Volume>,
}

/// The time from the first batch until the steel trowel has gone over the last one.
#[derive(Clone, Debug, PartialEq)]
pub struct Window {
    /// When placing begins.
    pub from: Moment,
    /// When the last batch is placed.
    pub placed: Moment,
    /// When the last of it is trowelled.
    pub finished: Moment,
    /// The forecast's hours in it, by number; empty where it has none.
    pub hours: Vec<usize>,
    /// True when the forecast has every hour of it.
    pub is_foretold: bool,
}

/// How concrete and coats are mixed, placed and finished.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PourPlan {
    /// When placing begins, where the file says.
    pub start: Option<Moment>,
    /// What is mixed from bags, in the order of the work.
    pub mixed: Vec<Mixed>,
    /// How the slab is placed; `None` where nothing is bought for it.
    pub placing: Option<Placing>,
    /// The forecast's hours, judged.
    pub hours: Vec<HourPlan>,
    /// When each step is due after placing begins: at `start`, at 70 °F where the file says no moment.
    pub clock: Vec<Due>,
    /// How the slab goes from hour to hour after `start`; empty without it.
    pub course: Vec<State>,
    /// From the first batch to the last trowel pass; `None` without a start.
    pub window: Option<Window>,
    /// The limits.
    pub limits: Option<Limits>,
}

impl PourPlan {
    /// The worst hour of the window; `None` where nothing is known of it.
    pub fn worst(&self) -> Option<&HourPlan> {
        let own = self.window.iter().flat_map(|w| &w.hours);
        let own = own.filter_map(|i| self.hours.get(*i));
        own.max_by(|a, b| {
            a.fitness
                .cmp(&b.fitness)
                .then(a.evaporation.total_cmp(&b.evaporation))
        })
    }

    /// The warmest air of the forecast; 70 °F without one.
    pub fn warmest(&self) -> Temperature {
        let air = self.hours.iter().map(|h| h.hour.air);
        air.reduce(|a, b| if b > a { b } else { a })
            .unwrap_or(REFERENCE)
    }

    /// The verdict on the whole window.
    pub fn fitness(&self) -> Option<Fitness> {
        self.worst().map(|h| h.fitness)
    }
}

/// Plans the pour.
pub fn reckon(plan: &Plan, mixed: &[Mixed]) -> PourPlan {
    let slab = mixed.iter().find(|m| m.need == Need::Concrete);
    let placing = slab.map(|m| placing(&plan.design, m.batches, batch_volume(m)));
    PourPlan {
        mixed: mixed.to_vec(),
        ..planned(&plan.design, placing)
    }
}

/// Plans the pour of a design whose slab is placed so: everything but the list of what is mixed.
pub fn planned(design: &Design, placing: Option<Placing>) -> PourPlan {
    let start = design.pour.at.as_ref().map(|at| at.value);
    let hours = hours(design);
    let moment = start.or_else(|| Moment::new(2000, 1, 1, 0, 0));
    let course = moment.map(|m| course(design, m));
    let clock = course.as_ref().map(|c| due(design, c)).unwrap_or_default();
    let window = start.map(|from| window(from, placing.as_ref(), &clock, &hours));
    let states = course
        .filter(|_| start.is_some())
        .map(|c| c.states().to_vec());
    PourPlan {
        start,
        mixed: Vec::new(),
        placing,
        hours,
        clock,
        course: states.unwrap_or_default(),
        window,
        limits: Some(Limits::of(design)),
    }
}

/// The mixed volume of one batch.
fn batch_volume(mixed: &Mixed) -> Option<Volume> {
    let whole = mixed.volume?;
    Some(whole * (mixed.bags_a_batch / mixed.exact.max(1e-9)).min(1.0))
}

/// How long so many batches take: a round of all mixers at a time.
pub fn placing(design: &Design, batches: u32, batch: Option<Volume>) -> Placing {
    let pour = &design.pour;
    let mixers = pour.mixers.value.max(1);
    let rounds = batches.div_ceil(mixers);
    let each = pour.batch_time.in_hours().max(1e-6);
    Placing {
        batches,
        rounds,
        time: TimeSpan::hours(f64::from(rounds) * each),
        rate: batch.map(|b| b * (f64::from(mixers) / each)),
    }
}

fn window(from: Moment, placing: Option<&Placing>, clock: &[Due], hours: &[HourPlan]) -> Window {
    let long = placing.map_or(0.0, |p| p.time.in_hours());
    let trowel = clock.iter().find(|d| d.step == Step::Trowel);
    let after = long + trowel.map_or(0.0, |d| d.after.in_hours());
    let is_in = |h: &HourPlan| {
        let at = h.hour.at.hours_since(from);
        at > -1.0 && at < after
    };
    let own: Vec<usize> = (0..hours.len()).filter(|i| is_in(&hours[*i])).collect();
    Window {
        is_foretold: is_foretold(&own, hours, (from, after)),
        from,
        placed: from.plus_hours(long),
        finished: from.plus_hours(after),
        hours: own,
    }
}

/// Whether hours follow each other without a gap from a moment on for so long.
fn is_foretold(own: &[usize], hours: &[HourPlan], (from, long): (Moment, f64)) -> bool {
    let mut reached = 0.0;
    for hour in own.iter().filter_map(|i| hours.get(*i)) {
        let at = hour.hour.at.hours_since(from);
        if at > reached + 1e-9 {
            return false;
        }
        reached = at + 1.0;
    }
    reached + 1e-9 >= long
}
