//! The order of work of an island.

use super::amounts::Amounts;
use super::calendar::{Calendar, DAY, Stretch};
use super::links::{self, Tie, minutes};
use super::network::{Link, Minutes};
use super::order::{Order, Step, Times, Waiting};
use super::schedule::{Calendars, Kind, Pouring, Schedule, Scheduled, Task};
use super::slack::slack;
use super::weather::Weather;
use super::cautions;
use crate::catalog::work::{Doer, Fitness, WorkStep};
use crate::design::Work;
use crate::parts::Assembly;
use crate::plan::Plan;
use crate::site::pour::PourPlan;
use crate::units::{Moment, TimeSpan};
use std::collections::BTreeSet;

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
    let steps: Vec<Step> = taken.iter().map(|s| step(amounts, s)).collect();
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
    order.waits = ties.into_iter().zip(waits).map(|(tie, wait)| waiting(tie, wait)).collect();
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
        let takes = order.steps.get(tie.from).map_or(0, |s| minutes(s.takes.in_hours()));
        after(tie, &dues, takes)
    };
    ties.iter().map(wait).collect()
}

/// What passes after the end of the earlier step: its own wait, or what the setting clock leaves of it.
fn after(tie: &Tie, dues: &super::weather::Dues, takes: Minutes) -> Minutes {
    let due = tie.due.map_or(0, |d| minutes(dues.of(d).in_hours()) - takes);
    tie.wait.max(due).max(0)
}

fn step(amounts: &Amounts, what: &'static WorkStep) -> Step {
    let work = &amounts.design().work;
    let change = work.steps.iter().find(|c| c.step == what.id);
    let told = change.and_then(|c| c.takes.as_ref());
    let hands = change.and_then(|c| c.hands.as_ref());
    let usual = || {
        let hours: f64 = what.paces.iter().map(|p| p.hours * amounts.of(p.of)).sum();
        let pace = if what.by == Doer::Crew { work.pace.value } else { 1.0 };
        let quarters = (hours * 60.0 / pace / ROUND - 1e-9).ceil().clamp(1.0, 1e5);
        TimeSpan::minutes(quarters * ROUND)
    };
    Step {
        what,
        takes: told.map_or_else(usual, |t| t.value),
        is_told: told.is_some(),
        hands: hands.map_or_else(|| cautions::hands(amounts, what.hands), |h| h.value),
        pieces: cautions::pieces(amounts, what),
        cautions: cautions::cautions(amounts, what),
        checks: cautions::checks(amounts, what, work.crew.value),
        times: None,
    }
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
    fn schedule(&self, order: &mut Order, ties: &[Tie], amounts: &Amounts, weather: &Weather) -> Option<Scheduled> {
        let tasks = tasks(order, ties);
        let own_waits = |begin: Option<Moment>| -> Vec<(usize, Minutes)> {
            let dues = (weather.dues)(begin);
            let due = ties.iter().enumerate().filter(|(_, t)| t.due.is_some());
            due.map(|(i, t)| (i, after(t, &dues, tasks[t.from].takes))).collect()
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
                waits: &|begin| own_waits(Some(self.moment(begin))),
            },
        };
        let done = schedule.run(&links, self.begin)?;
        let slack = slack(&tasks, &done, &self.calendars, order.crew);
        for ((step, stretches), slack) in order.steps.iter_mut().zip(&done.stretches).zip(slack) {
            step.times = self.times(stretches, slack);
        }
        let times = || order.steps.iter().filter_map(|s| s.times.as_ref());
        let first = times().map(|t| t.start).min();
        order.span = first.zip(times().map(|t| t.end).max());
        Some(done)
    }

    fn times(&self, stretches: &[Stretch], slack: Minutes) -> Option<Times> {
        let (first, last) = (stretches.first()?, stretches.last()?);
        Some(Times {
            start: self.moment(first.0),
            end: self.moment(last.1),
            stretches: stretches.iter().map(|s| (self.moment(s.0), self.moment(s.1))).collect(),
            float: TimeSpan::minutes(slack as f64),
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
        })
        .collect()
}

fn kind(order: &Order, ties: &[Tie], step: usize) -> Kind {
    let what = order.steps[step].what;
    if what.by != Doer::Crew {
        return Kind::Trades;
    }
    match what.fitness {
        Fitness::Placing => Kind::Pour,
        Fitness::Coat => Kind::Coat,
        Fitness::AsSet => {
            // Whoever puts something else before it takes it out of the setting clock's hands.
            let mut before = ties.iter().filter(|t| t.to == step);
            let is_pour = |t: &Tie| order.steps[t.from].what.fitness == Fitness::Placing;
            let alone = before.next().is_some_and(is_pour) && before.next().is_none();
            if alone { Kind::AsSet } else { Kind::Crew }
        }
        Fitness::Any | Fitness::Dry => Kind::Crew,
    }
}
