//! Steps and what must be done before them, without a calendar: how long everything takes if nobody ever rests.

/// A whole number of minutes.
pub type Minutes = i64;

/// One step must end before another begins.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Link {
    /// The earlier step.
    pub from: usize,
    /// The later one.
    pub to: usize,
    /// How long after the end of the earlier one, day and night.
    pub wait: Minutes,
}

/// Steps by number, how long each takes, and their links.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Network {
    /// How long each step takes; never less than nothing.
    pub takes: Vec<Minutes>,
    /// The links; a link to a step that there is not says nothing.
    pub links: Vec<Link>,
}

/// When each step can begin at the earliest, and must at the latest.
///
/// Invariant: `latest` is never before `earliest`; they are the same along at least one path from begin to end.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Passes {
    /// The earliest beginning of each step.
    pub earliest: Vec<Minutes>,
    /// The latest beginning of each step by which the whole takes no longer.
    pub latest: Vec<Minutes>,
    /// How long the whole takes.
    pub whole: Minutes,
}

impl Network {
    /// The links that say something.
    fn links(&self) -> impl Iterator<Item = &Link> {
        let count = self.takes.len();
        self.links
            .iter()
            .filter(move |l| l.from < count && l.to < count)
    }

    /// The steps in an order in which each comes after those it waits for, the first ones first; `None` where some wait for
    /// each other.
    pub fn in_order(&self) -> Option<Vec<usize>> {
        let mut waiting = vec![0_usize; self.takes.len()];
        for link in self.links() {
            waiting[link.to] += 1;
        }
        let mut order: Vec<usize> = Vec::with_capacity(waiting.len());
        let mut free: std::collections::BTreeSet<usize> =
            (0..waiting.len()).filter(|i| waiting[*i] == 0).collect();
        while let Some(next) = free.pop_first() {
            order.push(next);
            for link in self.links().filter(|l| l.from == next) {
                waiting[link.to] -= 1;
                if waiting[link.to] == 0 {
                    free.insert(link.to);
                }
            }
        }
        (order.len() == waiting.len()).then_some(order)
    }

    /// Goes through the steps forwards and backwards; `None` where some wait for each other.
    pub fn passes(&self) -> Option<Passes> {
        let order = self.in_order()?;
        let mut earliest = vec![0; self.takes.len()];
        for &step in &order {
            let end = earliest[step] + self.takes[step];
            for link in self.links().filter(|l| l.from == step) {
                earliest[link.to] = earliest[link.to].max(end + link.wait);
            }
        }
        let ends = earliest.iter().zip(&self.takes).map(|(e, t)| e + t);
        let whole = ends.max().unwrap_or(0);
        let mut latest: Vec<Minutes> = self.takes.iter().map(|t| whole - t).collect();
        for &step in order.iter().rev() {
            for link in self.links().filter(|l| l.from == step) {
                let end = latest[link.to] - link.wait;
                latest[step] = latest[step].min(end - self.takes[step]);
            }
        }
        Some(Passes {
            earliest,
            latest,
            whole,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::super::trial::networks;
    use super::*;
    use proptest::prelude::*;

    /// By hand: 0 (3) and 1 (2) before 2 (4), with a wait of 5 after 1; 3 (1) after 0. The path 1, 2 takes 2 + 5 + 4 = 11.
    #[test]
    fn a_small_network_by_hand() {
        let link = |from, to, wait| Link { from, to, wait };
        let network = Network {
            takes: vec![3, 2, 4, 1],
            links: vec![link(0, 2, 0), link(1, 2, 5), link(0, 3, 0)],
        };
        let passes = network.passes().unwrap();
        assert_eq!(passes.earliest, [0, 0, 7, 3]);
        assert_eq!(passes.latest, [4, 0, 7, 10]);
        assert_eq!(passes.whole, 11);
    }

    #[test]
    fn circles_have_no_order() {
        let network = Network {
            takes: vec![1, 1],
            links: vec![
                Link {
                    from: 0,
                    to: 1,
                    wait: 0,
                },
                Link {
                    from: 1,
                    to: 0,
                    wait: 0,
                },
            ],
        };
        assert_eq!(network.passes(), None);
    }

    proptest! {
        #[test]
        fn nothing_begins_before_what_it_waits_for(network in networks()) {
            let passes = network.passes().unwrap();
            for l in network.links() {
                for begins in [&passes.earliest, &passes.latest] {
                    prop_assert!(begins[l.to] >= begins[l.from] + network.takes[l.from] + l.wait);
                }
            }
            let tight: Vec<usize> = (0..network.takes.len()).filter(|i| passes.latest[*i] == passes.earliest[*i]).collect();
            prop_assert!((0..network.takes.len()).all(|i| passes.latest[i] >= passes.earliest[i]));
            // The steps without slack reach from the begin to the end.
            prop_assert!(tight.iter().any(|i| passes.earliest[*i] == 0));
            prop_assert!(tight.iter().any(|i| passes.earliest[*i] + network.takes[*i] == passes.whole));
        }
    }
}
