//! The search as a whole: a first answer, a bound, better answers, and the proof.

use super::bound::{by_width, raised};
use super::branching::{candidates, choose};
use super::column::{Column, Plan};
use super::covering::{Covering, Fit};
use super::greedy::{MOST_ON_A_STICK, first_fit};
use super::layout::patterns;
use super::master::{Pool, Relaxed, relax, shares};
use super::meter::Meter;
use super::mixes::{Cut, mixes};
use super::pricing::Pricer;
use super::problem::{Answer, Problem, Proof};
use super::rounding::{dive, rounded};
use super::task::Task;

/// About two seconds of a release build.
const STEPS: u64 = 2_000_000_000;
/// More items than this are not given to the solver.
const MOST_ITEMS: usize = 500;
/// More columns than this are not searched for the best choice.
const MOST_COLUMNS: usize = 20_000;
/// More mixes of sticks than this are not tried one by one.
const MOST_MIXES: usize = 2_000;

/// Cuts every demand from the sticks for the least cost; among equal costs from the fewest sticks.
///
/// The same problem gives the same answer, whatever the machine. Pieces of no length are left out.
pub fn solve(problem: &Problem) -> Answer {
    let mut task = Task::new(problem);
    if task.items.is_empty() {
        return answer(&task, &Plan::default(), 0);
    }
    let first = first_fit(&task, &task.counts());
    let most = most_sticks(&task, &first);
    task.weigh(most);
    let bound = by_width(&task);
    let mut search = Search {
        task: &task,
        best: first,
        bound: 0,
        meter: Meter::new(STEPS),
    };
    search.raise(bound, None);
    let _ = search.run();
    answer(&task, &search.best, search.bound)
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

fn answer(task: &Task, plan: &Plan, bound: u128) -> Answer {
    let cost = plan.cost(task);
    let cents = task.cents(bound).min(cost);
    let saturated = |cents: u128| u64::try_from(cents).unwrap_or(u64::MAX);
    let proven = task.items.is_empty() || (task.scale.exact && bound >= plan.price(task));
    Answer {
        patterns: patterns(task, plan),
        too_long: task.too_long.clone(),
        cost: saturated(cost),
        bound: saturated(cents),
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

    fn raise(&mut self, bound: u128, relaxed: Option<(&Relaxed, &[u64])>) {
        let counts = self.task.counts();
        let duals = relaxed.map(|(r, best)| (&r.duals, best, &counts[..]));
        let raised = raised(self.task, bound.max(self.bound), self.price(), duals);
        self.bound = self.bound.max(raised);
    }

    /// Ends early, with `None`, where it is done or the work ran out.
    fn run(&mut self) -> Option<()> {
        let task = self.task;
        let counts = task.counts();
        let shortest = task.items.first().map_or(1, |i| i.width);
        if self.done()
            || task.items.len() > MOST_ITEMS
            || task.longest() / shortest > MOST_ON_A_STICK as u64
        {
            return None;
        }
        let pricer = Pricer::new(task)?;
        let mut pool = first_columns(task, &self.best);
        let relaxed = relax(
            task,
            &pricer,
            &counts,
            &mut pool,
            self.price(),
            &mut self.meter,
        )?;
        let fills = pricer.best(task, &relaxed.duals.worth, &counts, &mut self.meter)?;
        let fills: Vec<u64> = fills.iter().map(|f| f.0).collect();
        self.raise(relaxed.bound, Some((&relaxed, &fills)));
        self.still_open()?;
        let share = shares(task, &counts, &pool.columns, &mut self.meter)?;
        for plan in rounded(
            task,
            &pricer,
            &pool,
            (&relaxed.duals.worth, &share),
            &mut self.meter,
        ) {
            self.offer(plan);
        }
        self.raise(relaxed.bound, Some((&relaxed, &fills)));
        self.still_open()?;
        let widths: Vec<u64> = task.items.iter().map(|i| i.width).collect();
        let rooms = pricer
            .best(task, &widths, &counts, &mut self.meter)?
            .iter()
            .map(|f| f.0)
            .collect();
        let cuts = vec![
            Cut::new(&relaxed.duals, fills),
            Cut {
                worth: widths,
                fill: rooms,
            },
        ];
        if self.settle(&pricer, &relaxed, &cuts).is_some() {
            return None;
        }
        let mut part = self.meter.part(50);
        if let Some(plan) = dive(task, &pricer, &pool, &share, &mut part) {
            self.offer(plan);
        }
        self.meter.settle(50, &part);
        self.still_open()?;
        self.choose_among(&pool.columns);
        self.still_open()?;
        self.prove(&pricer, &relaxed, MOST_COLUMNS)
    }

    fn still_open(&self) -> Option<()> {
        (!self.done()).then_some(())
    }

    /// Looks for the best answer among all columns that a better one could hold; `Some` once that is settled.
    fn prove(&mut self, pricer: &Pricer, relaxed: &Relaxed, most: usize) -> Option<()> {
        let mut part = self.meter.part(20);
        let columns = candidates(
            self.task,
            pricer,
            &relaxed.duals,
            self.price(),
            most,
            &mut part,
        );
        self.meter.settle(20, &part);
        let columns = columns?;
        if self.choose_among(&columns) {
            self.bound = self.price();
            return Some(());
        }
        None
    }

    /// Tries every mix of sticks that would be better, the cheapest first; `Some` once the best answer is settled.
    fn settle(&mut self, pricer: &Pricer, relaxed: &Relaxed, cuts: &[Cut]) -> Option<()> {
        let task = self.task;
        let mixes = mixes(task, cuts, (self.bound, self.price()), MOST_MIXES)?;
        let mut tried = 0;
        let mut ahead = 1;
        while tried < mixes.len() {
            let group = &mixes[tried..mixes.len().min(tried + ahead)];
            let price = group.last()?.price + 1;
            let columns = candidates(
                task,
                pricer,
                &relaxed.duals,
                price,
                MOST_COLUMNS,
                &mut self.meter,
            )?;
            let covering = Covering::new(task, cuts, &columns);
            for mix in group {
                // All cheaper mixes have been tried.
                self.bound = self.bound.max(mix.price);
                match covering.fit(mix, &mut self.meter) {
                    Fit::Found(plan) => {
                        self.offer(plan);
                        return Some(());
                    }
                    Fit::Impossible => {}
                    Fit::Unknown => return None,
                }
            }
            tried += group.len();
            ahead *= 4;
        }
        self.bound = self.price();
        Some(())
    }

    /// Takes the best choice among these columns if it is better; whether it is known to be the best of them.
    fn choose_among(&mut self, columns: &[Column]) -> bool {
        let range = (self.bound, self.price());
        let counts = self.task.counts();
        let choice = choose(self.task, &counts, columns, range, &mut self.meter);
        if let Some(plan) = choice.plan {
            self.offer(plan);
        }
        choice.best
    }
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
