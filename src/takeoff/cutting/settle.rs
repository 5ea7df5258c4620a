//! To proof: mixes of sticks that would be better are tried, the cheapest first, until one can be cut.

use super::column::Plan;
use super::covering::Fit;
use super::filling::{fit, packed};
use super::master::Pool;
use super::meter::Meter;
use super::mixed::{Verdict, judge};
use super::mixes::{Cut, Mix, cheapest};
use super::packing::Rounds;
use super::pricing::Pricer;
use super::task::Task;

/// More mixes of sticks than this are not listed at once.
const MOST_MIXES: usize = 2_000;
/// Pass by pass: first every mix is only packed, in a few rounds; then there are more rounds that learn otherwise, and more sticks
/// are searched piece by piece: the more, the surer and the slower.
const PASSES: [Effort; 5] = [
    effort(10, 0.6, 0, [0, 0]),
    effort(30, 0.3, 1, [10, 16]),
    effort(60, 0.9, 3, [16, 24]),
    effort(100, 0.2, 10, [20, 32]),
    effort(200, 0.5, 30, [24, 40]),
];
/// What packing one mix may take, in parts in a hundred of what is left.
const PACKING: u64 = 5;
/// So many mixes without an end in one pass, then every second is passed over, then more and more.
const PATIENCE: usize = 4;

/// What one pass may spend on a mix.
#[derive(Clone, Copy, Debug)]
struct Effort {
    /// Rounds of packing.
    rounds: Rounds,
    /// Parts in a hundred of the work that is left, for one search.
    share: u64,
    /// Sticks searched piece by piece.
    tails: [u64; 2],
}

const fn effort(most: u32, gain: f64, share: u64, tails: [u64; 2]) -> Effort {
    Effort {
        rounds: Rounds { most, gain },
        share,
        tails,
    }
}

/// Mixes tried one by one.
pub(super) struct Settling<'a> {
    pub task: &'a Task,
    pub pricer: &'a Pricer,
    pub cuts: Vec<Cut>,
    pub pool: Pool,
}

/// Where a pass ended.
#[derive(Clone, Debug, Default)]
pub(super) struct Pass {
    /// The best answer, if any was found.
    pub plan: Option<Plan>,
    /// No answer has a lower price than this.
    pub bound: u128,
}

impl Settling<'_> {
    /// All passes: from the bound to the price of the best answer, with more work for each mix every time.
    ///
    /// `offer` is called with what each pass found and tells the price of the best answer.
    pub(super) fn run(
        &mut self,
        bound: u128,
        meter: &mut Meter,
        offer: &mut dyn FnMut(Pass) -> u128,
    ) {
        let mut bound = bound;
        for effort in PASSES {
            let price = offer(Pass { plan: None, bound });
            if bound >= price || meter.spend(0).is_none() {
                return;
            }
            let mut pass = Pass { plan: None, bound };
            let _ = self.pass(&mut pass, price, effort, meter);
            bound = pass.bound;
            offer(pass);
        }
    }

    /// Tries the mixes with a price from the bound to below `price`; `None` if the work or the list ran out.
    fn pass(
        &mut self,
        pass: &mut Pass,
        price: u128,
        effort: Effort,
        meter: &mut Meter,
    ) -> Option<()> {
        let mut open = 0;
        let mut from = pass.bound;
        while from < price {
            let (list, end) = cheapest(self.task, &self.cuts, (from, price), MOST_MIXES, meter)?;
            let mut passed_over = 0;
            for mix in &list {
                if open > 0 && passed_over < open / PATIENCE {
                    passed_over += 1;
                    continue;
                }
                if open == 0 {
                    pass.bound = mix.price;
                }
                match self.try_mix(mix, effort, meter)? {
                    Fit::Found(plan) => {
                        pass.plan = Some(plan);
                        return Some(());
                    }
                    Fit::Impossible => {}
                    Fit::Unknown => {
                        open += 1;
                        passed_over = 0;
                    }
                }
            }
            if open == 0 {
                pass.bound = end;
            }
            from = end;
        }
        Some(())
    }

    fn try_mix(&mut self, mix: &Mix, effort: Effort, meter: &mut Meter) -> Option<Fit> {
        let counts = self.task.counts();
        if self
            .cuts
            .iter()
            .any(|cut| cut.slack(&counts, &mix.of).is_none())
        {
            return Some(Fit::Impossible);
        }
        let state = (&counts[..], &mix.of[..]);
        if let Verdict::Forbidden(cut) =
            judge(self.task, self.pricer, state, &mut self.pool, meter)?
        {
            self.cuts.push(cut);
            return Some(Fit::Impossible);
        }
        let known = (&self.cuts[..], &self.pool);
        let share = effort.share;
        let rounds = effort.rounds;
        let mut part = meter.part(PACKING);
        let packed = packed(self.task, self.pricer, known, (&mix.of, rounds), &mut part);
        meter.settle(PACKING, &part);
        if let Some(plan) = packed {
            return Some(Fit::Found(plan));
        }
        let mut searched = 0;
        for tail in effort.tails {
            let tail = tail.min(mix.of.iter().sum());
            if tail == searched {
                continue;
            }
            searched = tail;
            let mut part = meter.part(share);
            let found = fit(self.task, self.pricer, known, (&mix.of, tail), &mut part);
            meter.settle(share, &part);
            if found != Fit::Unknown {
                return Some(found);
            }
        }
        Some(Fit::Unknown)
    }
}
