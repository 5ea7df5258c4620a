//! Many fillings by fixed rules, then sheets taken apart and laid again.

use super::answer::sheet;
use super::bound::bound;
use super::fill::{Buy, Fit, Order, Parting, Rules, fill};
use super::laid::Laid;
use super::shop::Shop;
use super::{Answer, Problem};
use std::cmp::Reverse;

/// How many open rooms are looked at in all; a first filling is always finished.
const STEPS: u64 = 400_000;

/// How many of them are left when nothing can be saved any more and only the offcut can still grow.
const STEPS_WHEN_CHEAPEST: u64 = 60_000;

/// Cost, number of sheets, and the largest offcut: the less the better.
type Worth = (u64, usize, Reverse<u64>);

/// Lays a problem out: least cost, then fewest sheets, then the largest single offcut that were found.
///
/// The same problem has the same answer everywhere: the work is limited by a count, not by a clock. What no sheet can
/// hold, and what has a side of nothing, is named and left out.
pub fn solve(problem: &Problem) -> Answer {
    let shop = Shop::new(problem);
    let bound = bound(&shop);
    let mut search = Search::new(&shop, bound);
    search.by_rules();
    search.by_refitting();
    let mut laid = search.best.map(|b| b.laid).unwrap_or_default();
    laid.sort_by_key(|l| (shop.blanks[l.blank].stock, Reverse(l.used)));
    Answer {
        cost: cost(&shop, &laid),
        sheets: laid.iter().map(|l| sheet(&shop, l)).collect(),
        too_large: shop.too_large.clone(),
        bound,
    }
}

fn cost(shop: &Shop, laid: &[Laid]) -> u64 {
    let costs = laid.iter().map(|l| shop.blanks[l.blank].cost);
    costs.fold(0, u64::saturating_add)
}

struct Found {
    worth: Worth,
    laid: Vec<Laid>,
}

struct Search<'a> {
    shop: &'a Shop,
    bound: u64,
    best: Option<Found>,
    steps: u64,
    dice: Dice,
}

impl<'a> Search<'a> {
    fn new(shop: &'a Shop, bound: u64) -> Self {
        Self {
            shop,
            bound,
            best: None,
            steps: 0,
            dice: Dice(0x9E37_79B9_7F4A_7C15),
        }
    }

    /// Whether work is left; less is spent when the cost is proven.
    fn goes_on(&self, share: u64) -> bool {
        let cheapest = self.best.as_ref().is_some_and(|b| b.worth.0 <= self.bound);
        let limit = if cheapest { STEPS_WHEN_CHEAPEST } else { STEPS };
        self.best.is_none() || self.steps < limit / share
    }

    fn offer(&mut self, laid: Vec<Laid>) {
        let paid = (cost(self.shop, &laid), laid.len());
        if self
            .best
            .as_ref()
            .is_some_and(|b| paid > (b.worth.0, b.worth.1))
        {
            return;
        }
        let laid: Vec<_> = laid
            .into_iter()
            .map(|l| l.with_larger_offcuts(self.shop))
            .collect();
        let offcut = laid.iter().map(|l| l.largest_offcut(self.shop)).max();
        let worth = (paid.0, paid.1, Reverse(offcut.unwrap_or(0)));
        if self.best.as_ref().is_none_or(|b| worth <= b.worth) {
            self.best = Some(Found { worth, laid });
        }
    }

    /// Every order with every rule, until half of the work is done.
    fn by_rules(&mut self) {
        let mut pieces: Vec<usize> = (0..self.shop.rectangles.len()).collect();
        let blanks = 0..self.shop.blanks.len();
        let buys = std::iter::once(Buy::Enough).chain(blanks.map(Buy::Blank));
        for buy in buys {
            for parting in Parting::ALL {
                for order in Order::ALL {
                    order.sort(self.shop, &mut pieces);
                    for fit in Fit::ALL {
                        if !self.goes_on(2) {
                            return;
                        }
                        let rules = Rules { fit, parting, buy };
                        let mut laid = Vec::new();
                        fill(self.shop, &mut laid, &pieces, &rules, &mut self.steps);
                        self.offer(laid);
                    }
                }
            }
        }
    }

    /// Takes the emptiest sheet and a few others apart and lays their pieces again, on what is left and on new sheets,
    /// until the work is done.
    fn by_refitting(&mut self) {
        while self.goes_on(1) {
            let Some(best) = &self.best else {
                return;
            };
            if best.laid.is_empty() {
                return;
            }
            let mut laid = best.laid.clone();
            let mut pieces = self.take_apart(&mut laid);
            self.shuffle(&mut pieces);
            let rules = self.rules();
            fill(self.shop, &mut laid, &pieces, &rules, &mut self.steps);
            // Copying the sheets takes as long as looking at so many rooms.
            self.steps += (24 + 12 * laid.len() + 2 * self.shop.rectangles.len()) as u64;
            self.offer(laid);
        }
    }

    /// Removes sheets and gives their pieces.
    fn take_apart(&mut self, laid: &mut Vec<Laid>) -> Vec<usize> {
        let emptiness = |l: &Laid| {
            let room = self.shop.blanks[l.blank].size.area().max(1);
            u128::from(l.used) * 1_000_000 / u128::from(room)
        };
        let emptiest = (0..laid.len())
            .min_by_key(|i| emptiness(&laid[*i]))
            .unwrap_or(0);
        let others = self.dice.below(4.min(laid.len()));
        let mut pieces: Vec<usize> = laid.swap_remove(emptiest).pieces().collect();
        for _ in 0..others {
            let other = self.dice.below(laid.len());
            pieces.extend(laid.swap_remove(other).pieces());
        }
        pieces
    }

    /// Sorts by one of the orders, then moves some of the pieces.
    fn shuffle(&mut self, pieces: &mut [usize]) {
        let order = Order::ALL[self.dice.below(Order::ALL.len())];
        order.sort(self.shop, pieces);
        for _ in 0..self.dice.below(1 + pieces.len() / 2) {
            let (a, b) = (self.dice.below(pieces.len()), self.dice.below(pieces.len()));
            pieces.swap(a, b);
        }
    }

    fn rules(&mut self) -> Rules {
        let buy = self.dice.below(1 + self.shop.blanks.len());
        Rules {
            fit: Fit::ALL[self.dice.below(Fit::ALL.len())],
            parting: Parting::ALL[self.dice.below(Parting::ALL.len())],
            buy: buy.checked_sub(1).map_or(Buy::Enough, Buy::Blank),
        }
    }
}

/// Numbers that look thrown and are the same every time (G. Marsaglia, "Xorshift RNGs", 2003).
struct Dice(u64);

impl Dice {
    /// A number below `n`; 0 where there is none.
    fn below(&mut self, n: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        if n == 0 {
            0
        } else {
            ((self.0 >> 11) % n as u64) as usize
        }
    }
}
