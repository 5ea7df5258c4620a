//! The search as a whole: a first answer, a bound, better answers, and the proof.

use super::bound::by_width;
use super::column::{Column, Plan};
use super::greedy::{MOST_ON_A_STICK, first_fit};
use super::layout::patterns;
use super::master::{Pool, relax, shares};
use super::meter::Meter;
use super::mixes::Cut;
use super::offcut::{lengthened, longest};
use super::pricing::Pricer;
use super::problem::{Answer, Offcut, Problem, Proof};
use super::rounding::{dive, rounded};
use super::settle::Settling;
use super::task::Task;

/// About two seconds of a release build.
const STEPS: u64 = 1_500_000_000;
/// So much is spent on a longer offcut.
const OFFCUT_STEPS: u64 = 2_000_000;
/// More items than this are not given to the solver.
const MOST_ITEMS: usize = 500;
/// With more sticks than this the relaxation is solved again after each rounding, before anything is searched.
const MANY: u128 = 64;

/// Cuts every demand from the sticks for the least cost; among equal costs from the fewest sticks.
///
/// The same problem gives the same answer, whatever the machine. Pieces of no length are left out.
pub fn solve(problem: &Problem) -> Answer {
    let mut task = Task::new(problem);
    if task.items.is_empty() {
        return answer(&task, &Plan::default(), 0, true);
    }
    let first = first_fit(&task, &task.counts());
    let most = most_sticks(&task, &first);
    task.weigh(most);
    let mut search = Search {
        task: &task,
        bound: by_width(&task).min(first.price(&task)),
        best: first,
        meter: Meter::new(STEPS),
        cuts: Vec::new(),
    };
    let pricer = search.pricer();
    let proven = pricer.is_some_and(|pricer| {
        let _ = search.run(&pricer);
        search.lengthen(&pricer).unwrap_or(false)
    });
    answer(&task, &search.best, search.bound, proven)
}

/// No answer that costs no more than this one has more sticks.
fn most_sticks(task: &Task, plan: &Plan) -> u64 {
    let pieces = task
        .counts()
        .iter()
        .fold(0, |sum: u64, n| sum.saturating_add(*n));
    let least = task.stocks.iter().map(|s| s.cost).min().unwrap_or(0);
    let by_cost = plan
        .cost(task)
        .checked_div(least.into())
        .and_then(|n| u64::try_from(n).ok());
    by_cost.map_or(pieces, |n| n.min(pieces))
}

fn answer(task: &Task, plan: &Plan, bound: u128, longest_proven: bool) -> Answer {
    let cost = plan.cost(task);
    let cents = task.cents(bound).min(cost);
    let saturated = |cents: u128| u64::try_from(cents).unwrap_or(u64::MAX);
    let proven = task.items.is_empty() || (task.scale.exact && bound >= plan.price(task));
    Answer {
        patterns: patterns(task, plan),
        too_long: task.too_long.clone(),
        cost: saturated(cost),
        bound: saturated(cents),
        offcut: Offcut {
            length: longest(task, plan) as u32,
            proven: longest_proven,
        },
        proof: if proven {
            Proof::Proven
        } else {
            Proof::Within {
                bound: saturated(cents),
            }
        },
    }
}

/// The best answer and the best bound so far.
struct Search<'a> {
    task: &'a Task,
    best: Plan,
    bound: u128,
    meter: Meter,
    cuts: Vec<Cut>,
}

impl Search<'_> {
    fn price(&self) -> u128 {
        self.best.price(self.task)
    }

    fn done(&self) -> bool {
        self.bound >= self.price()
    }

    fn offer(&mut self, plan: Plan) {
        let rank = |p: &Plan| (p.cost(self.task), p.sticks());
        if rank(&plan) < rank(&self.best) {
            self.best = plan;
        }
    }

    /// `None` where the task is too large to be searched.
    fn pricer(&self) -> Option<Pricer> {
        let task = self.task;
        let shortest = task.items.first().map_or(1, |i| i.width);
        let many = task.items.len() > MOST_ITEMS;
        let long = task.longest() / shortest > MOST_ON_A_STICK as u64;
        if many || long {
            None
        } else {
            Pricer::new(task)
        }
    }

    /// Ends early, with `None`, where it is done or the work ran out.
    fn run(&mut self, pricer: &Pricer) -> Option<()> {
        self.still_open()?;
        let task = self.task;
        let counts = task.counts();
        let mut pool = first_columns(task, &self.best);
        let enough = self.price();
        let relaxed = relax(task, pricer, &counts, &mut pool, enough, &mut self.meter)?;
        self.bound = self.bound.max(relaxed.bound.min(enough));
        let worth = relaxed.duals.worth;
        self.cuts
            .push(cut(task, pricer, worth.clone(), &mut self.meter)?);
        self.still_open()?;
        let share = shares(task, &counts, &pool.columns, &mut self.meter)?;
        for plan in rounded(task, pricer, &pool, (&worth, &share), &mut self.meter) {
            self.offer(plan);
        }
        self.still_open()?;
        if self.best.sticks() > MANY {
            let mut part = self.meter.part(40);
            if let Some(plan) = dive(task, pricer, &pool, &share, &mut part) {
                self.offer(plan);
            }
            self.meter.settle(40, &part);
            self.still_open()?;
        }
        self.settle(pricer, pool)
    }

    fn still_open(&self) -> Option<()> {
        (!self.done()).then_some(())
    }

    fn settle(&mut self, pricer: &Pricer, pool: Pool) -> Option<()> {
        let task = self.task;
        self.cuts.push(by_widths(task, pricer, &mut self.meter)?);
        let mut meter = std::mem::replace(&mut self.meter, Meter::new(0));
        let cuts = std::mem::take(&mut self.cuts);
        let mut settling = Settling {
            task,
            pricer,
            cuts,
            pool,
        };
        settling.run(self.bound, &mut meter, &mut |pass| {
            pass.plan.into_iter().for_each(|plan| self.offer(plan));
            self.bound = self.bound.max(pass.bound.min(self.price()));
            self.price()
        });
        self.cuts = settling.cuts;
        self.meter = meter;
        Some(())
    }

    /// Looks for longer offcuts until none is found; whether none is longer.
    fn lengthen(&mut self, pricer: &Pricer) -> Option<bool> {
        let mut meter = Meter::new(OFFCUT_STEPS);
        if self.cuts.is_empty() {
            self.cuts.push(by_widths(self.task, pricer, &mut meter)?);
        }
        let (plan, proven) = lengthened(self.task, pricer, &self.cuts, &self.best, &mut meter);
        if let Some(plan) = plan.filter(|p| p.price(self.task) <= self.price()) {
            self.best = plan;
        }
        Some(proven && self.done() && self.task.scale.exact)
    }
}

/// The cut of these worths.
fn cut(task: &Task, pricer: &Pricer, worth: Vec<u64>, meter: &mut Meter) -> Option<Cut> {
    let offers = pricer.best(task, &worth, &task.counts(), meter)?;
    let fill = offers.iter().map(|o| o.0).collect();
    Some(Cut { worth, fill })
}

/// The cut by which every step of a piece is worth the same.
fn by_widths(task: &Task, pricer: &Pricer, meter: &mut Meter) -> Option<Cut> {
    let widths = task.items.iter().map(|i| i.width).collect();
    cut(task, pricer, widths, meter)
}

/// Sticks of one length of piece each, and those of the first answer.
fn first_columns(task: &Task, plan: &Plan) -> Pool {
    let mut pool = Pool::default();
    for item in 0..task.items.len() {
        for stock in &task.stocks {
            let mut order = Vec::new();
            let mut at = 0;
            while (order.len() as u64) < task.items[item].count
                && task.lay(at, item).end <= stock.room
            {
                at = task.lay(at, item).end;
                order.push(item);
            }
            if let Some(column) = Column::of(task, order) {
                pool.add(column);
            }
        }
    }
    for (column, _) in &plan.columns {
        pool.add(column.clone());
    }
    pool
}
