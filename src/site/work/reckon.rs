//! The order of work of an island.

use super::amounts::Amounts;
use super::calendar::{Calendar, DAY, Stretch};
use super::cautions;
use super::driving::driving;
use super::links::{self, Tie, minutes};
use super::network::{Link, Minutes};
use super::order::{Order, Source, Step, Times, Waiting};
use super::schedule::{Calendars, Kind, Pouring, Schedule, Scheduled, Task};
use super::slack::{slack, with_hands};
use super::weather::Weather;
use crate::catalog::work::{Doer, Fitness, WorkStep};
use crate::design::Work;
use crate::parts::Assembly;
use crate::plan::Plan;
use crate::site::pour::PourPlan;
use crate::units::{Moment, TimeSpan};
use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};

/// Hours of work are rounded up to these many minutes: nobody plans by the minute.
const ROUND: f64 = 15.0;

/// Orders the work.
pub fn reckon(plan: &Plan, assembly: &Assembly, pour: &PourPlan) -> Order {
    let weather = Weather::of(&plan.design, pour);
    order(&Amounts::new(plan, assembly), &weather)
}

/// Orders the work of these amounts in this weather.
pub(super) fn order(amounts: &Amounts, weather: &Weather) -> Order {
    let work = &amounts.design().work;
    let taken = links::taken(amounts);
    let ties = links::ties(amounts, &taken);
    let steps: Vec<Step> = taken.iter().map(|s| step(amounts, weather, s)).collect();
    let mut order = Order {
        is_asked: work.is_asked,
        steps,
        waits: Vec::new(),
        crew: work.crew.value,
        pace: work.pace.value,
        span: None,
        notes: Vec::new(),
    };
    let dated = work.start.as_ref().and_then(|start| {
        let days = Days::new(work, start.value, weather);
        days.schedule(&mut order, &ties, amounts, weather)
    });
    let waits: Vec<Minutes> = match &dated {
        Some(done) => done.links.iter().map(|l| l.wait).collect(),
        None => undated(&order, &ties, weather),
    };
    order.waits = ties
        .into_iter()
        .zip(waits)
        .map(|(tie, wait)| waiting(tie, wait))
        .collect();
    super::notes::add(&mut order, amounts, weather, dated.as_ref());
    in_time(order)
}

fn waiting(tie: Tie, wait: Minutes) -> Waiting {
    Waiting {
        from: tie.from,
        to: tie.to,
        wait: TimeSpan::minutes(wait as f64),
        why: if wait > 0 { tie.why } else { String::new() },
    }
}

/// The waits where nothing has a date.
fn undated(order: &Order, ties: &[Tie], weather: &Weather) -> Vec<Minutes> {
    let dues = (weather.dues)(None);
    let wait = |tie: &Tie| {
        let takes = order
            .steps
            .get(tie.from)
            .map_or(0, |s| minutes(s.takes.in_hours()));
        after(tie, &dues, takes)
    };
    ties.iter().map(wait).collect()
}

/// What passes after the end of the earlier step: its own wait, or what the setting clock leaves of it.
fn after(tie: &Tie, dues: &super::weather::Dues, takes: Minutes) -> Minutes {
    // The setting clock is not good to a minute: quarters of an hour.
    let quarters = |hours: f64| minutes((hours * 4.0 - 1e-9).ceil() / 4.0);
    let due = tie
        .due
        .map_or(0, |d| quarters(dues.of(d).in_hours()) - takes);
    tie.wait.max(due).max(0)
}

fn step(amounts: &Amounts, weather: &Weather, what: &'static WorkStep) -> Step {
    let work = &amounts.design().work;
    let change = work.steps.iter().find(|c| c.step == what.id);
    let told = change.and_then(|c| c.takes.as_ref());
    let hands = change.and_then(|c| c.hands.as_ref());
    let (takes, source) = match told {
        Some(told) => (told.value, Source::File),
        None => takes(amounts, weather, what),
    };
    Step {
        what,
        takes,
        source,
        hands: hands.map_or_else(|| cautions::hands(amounts, what.hands), |h| h.value),
        pieces: cautions::pieces(amounts, what),
        cautions: cautions::cautions(amounts, what),
        checks: cautions::checks(amounts, what, work.crew.value),
        times: None,
    }
}

/// How long a step takes where the file does not say, and where that comes from.
fn takes(amounts: &Amounts, weather: &Weather, what: &WorkStep) -> (TimeSpan, Source) {
    let hours: f64 = what.paces.iter().map(|p| p.hours * amounts.of(p.of)).sum();
    let pace = match what.by {
        Doer::Crew => amounts.design().work.pace.value,
        _ => 1.0,
    };
    let usual = hours / pace;
    let dues = (weather.dues)(None);
    let (hours, source) = match (what.fitness, weather.time) {
        (Fitness::Placing, Some(time)) => (time.in_hours(), Source::Pour),
        // The last batch is trowelled as long after the first as it was placed after it.
        (Fitness::AsSet, Some(time)) => {
            let floats = dues.float.in_hours().max(time.in_hours());
            let trowelled = dues.trowel.in_hours() + time.in_hours();
            (usual.max(trowelled - floats), Source::Pour)
        }
        _ => (usual, Source::Default),
    };
    let quarters = (hours * 60.0 / ROUND - 1e-9).ceil().clamp(1.0, 1e5);
    (TimeSpan::minutes(quarters * ROUND), source)
}

/// Steps by their beginning, those without a date last; links with them.
fn in_time(order: Order) -> Order {
    let mut places: Vec<usize> = (0..order.steps.len()).collect();
    if order.span.is_some() {
        let begin = |i: &usize| order.steps[*i].times.as_ref().map(|t| t.start);
        places.sort_by_key(|i| (begin(i).is_none(), begin(i), *i));
    }
    let mut steps: Vec<Option<Step>> = order.steps.into_iter().map(Some).collect();
    let new = |old: usize| places.iter().position(|p| *p == old).unwrap_or(old);
    let mut waits: Vec<Waiting> = order.waits;
    for wait in &mut waits {
        (wait.from, wait.to) = (new(wait.from), new(wait.to));
    }
    waits.sort_by_key(|w| (w.to, w.from));
    Order {
        steps: places.iter().filter_map(|p| steps[*p].take()).collect(),
        waits,
        ..order
    }
}

/// The calendar of a design: minutes since the midnight before the first day of work.
struct Days {
    zero: Moment,
    begin: Minutes,
    calendars: Calendars,
    covered: Option<Stretch>,
    fit: BTreeSet<Minutes>,
}

impl Days {
    fn new(work: &Work, start: Moment, weather: &Weather) -> Self {
        let zero = start.midnight();
        let since = |m: Moment| signed_minutes(m.hours_since(zero));
        let off: Vec<i64> = work.off.iter().map(|d| since(*d).div_euclid(DAY)).collect();
        let calendar = |shift| Calendar::new(shift, zero.weekday(), off.iter().copied());
        let crew = calendar(&work.own);
        let bad = weather.no_coats.iter().map(|(a, b)| (since(*a), since(*b)));
        Self {
            begin: since(start),
            calendars: Calendars {
                coat: crew.clone().without(bad),
                trades: calendar(&work.trades),
                crew,
            },
            covered: weather.covered.map(|(a, b)| (since(a), since(b))),
            fit: weather.placing.iter().map(|m| since(*m)).collect(),
            zero,
        }
    }

    fn moment(&self, at: Minutes) -> Moment {
        self.zero.plus_hours(at as f64 / 60.0)
    }

    /// Gives the steps their times.
    fn schedule(
        &self,
        order: &mut Order,
        ties: &[Tie],
        amounts: &Amounts,
        weather: &Weather,
    ) -> Option<Scheduled> {
        let tasks = tasks(order, ties);
        // The setting clock goes through days of weather: each moment is asked for once.
        let known: RefCell<BTreeMap<Minutes, Vec<(usize, Minutes)>>> = RefCell::default();
        let own_waits = |begin: Minutes| -> Vec<(usize, Minutes)> {
            if let Some(waits) = known.borrow().get(&begin) {
                return waits.clone();
            }
            let dues = (weather.dues)(Some(self.moment(begin)));
            let due = ties.iter().enumerate().filter(|(_, t)| t.due.is_some());
            let waits: Vec<_> = due
                .map(|(i, t)| (i, after(t, &dues, tasks[t.from].takes)))
                .collect();
            known.borrow_mut().insert(begin, waits.clone());
            waits
        };
        let links: Vec<Link> = ties
            .iter()
            .map(|t| Link {
                from: t.from,
                to: t.to,
                wait: after(t, &(weather.dues)(None), tasks[t.from].takes),
            })
            .collect();
        let at = amounts.design().pour.at.as_ref();
        let schedule = Schedule {
            tasks: &tasks,
            crew: order.crew,
            calendars: &self.calendars,
            pouring: Pouring {
                at: at.map(|at| signed_minutes(at.hours_since(self.zero))),
                covered: self.covered,
                fit: self.fit.clone(),
                waits: &own_waits,
            },
        };
        let done = schedule.run(&links, self.begin)?;
        let links = with_hands(&tasks, &done, order.crew);
        let slack = slack(&tasks, &done.stretches, &links, &self.calendars);
        let driving = driving(&tasks, &done.stretches, &links, &self.calendars);
        let steps = order.steps.iter_mut().zip(&done.stretches);
        for ((step, stretches), (slack, drives)) in steps.zip(slack.into_iter().zip(driving)) {
            step.times = self.times(stretches, slack, drives);
        }
        let times = || order.steps.iter().filter_map(|s| s.times.as_ref());
        let first = times().map(|t| t.start).min();
        order.span = first.zip(times().map(|t| t.end).max());
        Some(done)
    }

    fn times(&self, stretches: &[Stretch], slack: Minutes, is_critical: bool) -> Option<Times> {
        let (first, last) = (stretches.first()?, stretches.last()?);
        Some(Times {
            start: self.moment(first.0),
            end: self.moment(last.1),
            stretches: stretches
                .iter()
                .map(|s| (self.moment(s.0), self.moment(s.1)))
                .collect(),
            float: TimeSpan::minutes(slack as f64),
            is_critical,
        })
    }
}

/// Hours in whole minutes, before and after.
fn signed_minutes(hours: f64) -> Minutes {
    (hours * 60.0).round().clamp(-1e9, 1e9) as Minutes
}

/// The steps as the schedule sees them.
fn tasks(order: &Order, ties: &[Tie]) -> Vec<Task> {
    let steps = order.steps.iter().enumerate();
    steps
        .map(|(i, step)| Task {
            takes: minutes(step.takes.in_hours()),
            hands: step.hands.min(order.crew),
            kind: kind(order, ties, i),
            at_once: step.what.at_once,
        })
        .collect()
}

fn kind(order: &Order, ties: &[Tie], step: usize) -> Kind {
    let what = order.steps[step].what;
    if what.by != Doer::Crew {
        return Kind::Trades;
    }
    let mut after = ties.iter().filter(|t| t.from == step);
    let is_pour = |s: usize| order.steps[s].what.fitness == Fitness::Placing;
    // The last checklist before the pour is read on the same morning.
    let leads = after
        .next()
        .is_some_and(|t| is_pour(t.to) && only_before(order, ties, t.to).is_some());
    if leads && after.next().is_none() && what.is_hold {
        return Kind::Lead;
    }
    match what.fitness {
        Fitness::Placing => Kind::Pour,
        Fitness::Coat => Kind::Coat,
        // Whoever puts something else before it takes it out of the setting clock's hands.
        Fitness::AsSet if only_before(order, ties, step).is_some_and(|s| s == Fitness::Placing) => {
            Kind::AsSet
        }
        Fitness::AsSet | Fitness::Any | Fitness::Dry => Kind::Crew,
    }
}

/// The weather that the one step before this one needs; `None` where several are before it, or none.
fn only_before(order: &Order, ties: &[Tie], step: usize) -> Option<Fitness> {
    let mut before = ties.iter().filter(|t| t.to == step);
    let first = before.next()?;
    let alone = before.next().is_none();
    alone.then(|| order.steps[first.from].what.fitness)
}
