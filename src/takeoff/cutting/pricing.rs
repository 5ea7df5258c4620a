//! Which filling of a stick is worth most, given what every piece is worth.

use super::align::Places;
use super::bounded::within;
use super::column::Column;
use super::meter::Meter;
use super::plain::Fronts;
use super::task::Task;

/// Finds the best filling of every stock, exactly and in whole numbers.
#[derive(Debug)]
pub(super) enum Pricer {
    /// Nothing is aligned.
    Plain,
    /// Some pieces are.
    Aligned(Places),
}

impl Pricer {
    /// `None` if the sticks are too long for the pieces on them to be searched.
    pub(super) fn new(task: &Task) -> Option<Pricer> {
        match task.pitch {
            None => Some(Pricer::Plain),
            Some(_) => Places::new(task).map(Pricer::Aligned),
        }
    }

    /// The best filling of each stock, and what it is worth. `None` if the work ran out.
    pub(super) fn best(
        &self,
        task: &Task,
        worth: &[u64],
        counts: &[u64],
        meter: &mut Meter,
    ) -> Option<Vec<(u64, Column)>> {
        match self {
            Pricer::Plain => {
                let fronts = Fronts::new(task, worth, counts, meter)?;
                Some((0..task.stocks.len()).map(|s| fronts.best(s)).collect())
            }
            Pricer::Aligned(places) => {
                let needed: Vec<u64> = worth
                    .iter()
                    .zip(counts)
                    .map(|(w, n)| if *n > 0 { *w } else { 0 })
                    .collect();
                places.best(task, &needed, meter)
            }
        }
    }

    /// A good filling of each stock without pieces too many, and what it is worth: the best where nothing is aligned.
    /// `None` if the work ran out.
    pub(super) fn within(
        &self,
        task: &Task,
        worth: &[u64],
        left: &[u64],
        meter: &mut Meter,
    ) -> Option<Vec<(u64, Column)>> {
        match self {
            Pricer::Plain => self.best(task, worth, left, meter),
            Pricer::Aligned(places) => within(task, places, (worth, left), meter),
        }
    }

    /// Every filling worth considering that is worth at least what its stock asks in `least`; `None` in place of a stock's
    /// number where no filling of it is wanted. `None` if there are more than `most`, or the work ran out.
    pub(super) fn all(
        &self,
        task: &Task,
        worth: &[u64],
        least: &[Option<u64>],
        most: usize,
        meter: &mut Meter,
    ) -> Option<Vec<Column>> {
        let counts = task.counts();
        let mut all = Vec::new();
        let fronts = match self {
            Pricer::Plain => Some(Fronts::new(task, worth, &counts, meter)?),
            Pricer::Aligned(_) => None,
        };
        for (stock, least) in least.iter().enumerate() {
            let Some(least) = least else { continue };
            let room = most - all.len();
            all.extend(match (self, &fronts) {
                (Pricer::Aligned(places), _) => {
                    places.all(task, (worth, &counts), (stock, *least), room, meter)?
                }
                (_, Some(fronts)) => fronts.all(stock, *least, room, meter)?,
                _ => return None,
            });
        }
        Some(all)
    }
}
