//! Which numbers of each stock could make a better answer: few, because money, room and worth are all tight.

use super::bound::Duals;
use super::task::Task;

/// What every choice of sticks must obey, given what each piece is worth: the best fillings together are worth at least as much
/// as all pieces.
#[derive(Clone, Debug)]
pub(super) struct Cut {
    /// Worth of a piece of each item.
    pub worth: Vec<u64>,
    /// What the best filling of each stock is worth.
    pub fill: Vec<u64>,
}

impl Cut {
    /// The cut of these duals.
    pub(super) fn new(duals: &Duals, fill: Vec<u64>) -> Cut {
        Cut {
            worth: duals.worth.clone(),
            fill,
        }
    }

    /// What these pieces are worth.
    pub(super) fn need(&self, counts: &[u64]) -> u128 {
        self.worth
            .iter()
            .zip(counts)
            .map(|(w, n)| u128::from(*w) * u128::from(*n))
            .sum()
    }

    /// What these sticks can hold.
    pub(super) fn holds(&self, mix: &[u64]) -> u128 {
        self.fill
            .iter()
            .zip(mix)
            .map(|(f, n)| u128::from(*f) * u128::from(*n))
            .sum()
    }
}

/// How many of each stock, and what they cost together.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Mix {
    pub price: u128,
    pub of: Vec<u64>,
}

/// All mixes with a price from `from` to below `to` that no cut forbids, the cheapest first; `None` if there are more than `most`.
pub(super) fn mixes(
    task: &Task,
    cuts: &[Cut],
    (from, to): (u128, u128),
    most: usize,
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
        steps: 200 * most,
        found: Vec::new(),
    };
    let mut of = vec![0; task.stocks.len()];
    list.extend(task.stocks.len(), 0, &mut of)?;
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
        let Some(stock) = open.checked_sub(1) else {
            let enough = self
                .cuts
                .iter()
                .zip(&self.needs)
                .all(|(c, need)| c.holds(of) >= *need);
            if enough && price >= self.from {
                self.found.push(Mix {
                    price,
                    of: of.clone(),
                });
            }
            return (self.found.len() <= self.most).then_some(());
        };
        let each = u128::from(self.task.stocks[stock].price);
        let mut price = price;
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
}
