//! Which numbers of each stock could make a better answer: few, because money, room and worth are all tight.

use super::meter::Meter;
use super::task::Task;

/// What every choice of sticks must obey, given what each piece is worth: the best fillings together are worth at least as
/// much as all pieces.
#[derive(Clone, Debug)]
pub(super) struct Cut {
    /// Worth of a piece of each item.
    pub worth: Vec<u64>,
    /// What the best filling of each stock is worth.
    pub fill: Vec<u64>,
}

impl Cut {
    /// What these pieces are worth.
    pub(super) fn need(&self, counts: &[u64]) -> u128 {
        product(&self.worth, counts)
    }

    /// What these sticks can hold.
    pub(super) fn holds(&self, mix: &[u64]) -> u128 {
        product(&self.fill, mix)
    }

    /// How much more than needed these sticks can hold; `None` if they cannot hold the pieces.
    pub(super) fn slack(&self, counts: &[u64], mix: &[u64]) -> Option<u128> {
        self.holds(mix).checked_sub(self.need(counts))
    }
}

fn product(each: &[u64], counts: &[u64]) -> u128 {
    let one = |(e, n): (&u64, &u64)| u128::from(*e) * u128::from(*n);
    each.iter().zip(counts).map(one).sum()
}

/// How many of each stock, and what they cost together.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Mix {
    pub price: u128,
    pub of: Vec<u64>,
}

/// The cheapest mixes that no cut forbids, in order, with a price from `from` to below `to`; and the price up to which they are all.
///
/// `None` if even the cheapest are too many to list.
pub(super) fn cheapest(
    task: &Task,
    cuts: &[Cut],
    (from, to): (u128, u128),
    most: usize,
    meter: &mut Meter,
) -> Option<(Vec<Mix>, u128)> {
    let mut window = (to - from).clamp(1, 1 << 40);
    loop {
        let end = to.min(from + window);
        if let Some(found) = mixes(task, cuts, (from, end), most, meter) {
            return Some((found, end));
        }
        if window == 1 || meter.spend(0).is_none() {
            return None;
        }
        window = (window / 8).max(1);
    }
}

/// All mixes with a price from `from` to below `to` that no cut forbids, the cheapest first; `None` if there are more than `most`.
fn mixes(
    task: &Task,
    cuts: &[Cut],
    (from, to): (u128, u128),
    most: usize,
    meter: &mut Meter,
) -> Option<Vec<Mix>> {
    let counts = task.counts();
    let needs: Vec<u128> = cuts.iter().map(|c| c.need(&counts)).collect();
    let mut list = List {
        task,
        cuts,
        needs,
        from,
        to,
        most,
        steps: 100 * most,
        found: Vec::new(),
    };
    let mut of = vec![0; task.stocks.len()];
    let whole = list.extend(task.stocks.len(), 0, &mut of);
    // Each step looks at every stock by every cut.
    let steps = (100 * most - list.steps) * (task.stocks.len() + 2) * (cuts.len() + 2);
    meter.spend(3 * steps as u64)?;
    whole?;
    list.found.sort();
    Some(list.found)
}

struct List<'a> {
    task: &'a Task,
    cuts: &'a [Cut],
    needs: Vec<u128>,
    from: u128,
    to: u128,
    most: usize,
    steps: usize,
    found: Vec<Mix>,
}

impl List<'_> {
    /// Chooses the numbers of the first `open` stocks; those of the dearer ones are chosen.
    fn extend(&mut self, open: usize, price: u128, of: &mut Vec<u64>) -> Option<()> {
        self.steps = self.steps.checked_sub(1)?;
        if !self.can_hold(open, price, of) {
            return Some(());
        }
        let Some(stock) = open.checked_sub(1) else {
            if price >= self.from {
                self.found.push(Mix {
                    price,
                    of: of.clone(),
                });
            }
            return (self.found.len() <= self.most).then_some(());
        };
        let each = u128::from(self.task.stocks[stock].price);
        let least = match stock {
            0 => self.from.saturating_sub(price).div_ceil(each.max(1)),
            _ => 0,
        };
        let mut price = price + least * each;
        of[stock] = u64::try_from(least).ok()?;
        while price < self.to {
            self.extend(stock, price, of)?;
            if each == 0 {
                return None;
            }
            price += each;
            of[stock] += 1;
        }
        of[stock] = 0;
        Some(())
    }

    /// Whether the sticks chosen, and the best of the open ones for the money left, can hold the pieces by every cut.
    fn can_hold(&self, open: usize, price: u128, of: &[u64]) -> bool {
        let money = self.to - 1 - price;
        self.cuts.iter().zip(&self.needs).all(|(cut, need)| {
            let holds = cut.holds(of);
            let stocks = self.task.stocks[..open].iter().zip(&cut.fill);
            let more =
                stocks.map(|(s, fill)| u128::from(*fill) * money / u128::from(s.price.max(1)));
            holds + more.max().unwrap_or(0) >= *need
        })
    }
}
