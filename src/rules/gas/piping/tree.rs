//! A tree of gas pipe: branches from the supply to the appliances.

use super::Nominal;
use crate::units::{Length, Power};

/// One branch of the tree.
#[derive(Clone, Debug, PartialEq)]
pub struct Branch {
    /// Its name.
    pub name: String,
    /// The number of the branch it is fed by; `None` where it starts at the supply.
    pub upstream: Option<usize>,
    /// Its own length.
    pub length: Length,
    /// Its nominal size; `None` for what the tables do not hold, such as flexible tubing.
    pub size: Option<Nominal>,
    /// The heat of the appliance at its end: nothing where it serves none, `None` where it is not known.
    pub load: Option<Power>,
}

/// A tree of branches. Each branch is fed by an earlier one.
#[derive(Clone, Debug, PartialEq)]
pub struct Tree(Vec<Branch>);

impl Tree {
    /// The tree of some branches; `None` when one is fed by itself or by a later one.
    pub fn new(branches: Vec<Branch>) -> Option<Self> {
        let fed = |(i, b): (usize, &Branch)| b.upstream.is_none_or(|u| u < i);
        branches
            .iter()
            .enumerate()
            .all(fed)
            .then_some(Self(branches))
    }

    /// The branches.
    pub fn branches(&self) -> &[Branch] {
        &self.0
    }

    /// What each branch has to carry: its own load and those of all that it feeds; `None` where one of them is not known.
    pub fn loads(&self) -> Vec<Option<Power>> {
        let mut loads: Vec<_> = self.0.iter().map(|b| b.load).collect();
        for i in (0..self.0.len()).rev() {
            if let Some(up) = self.0[i].upstream {
                loads[up] = loads[up].zip(loads[i]).map(|(a, b)| a + b);
            }
        }
        loads
    }

    /// The branches from the supply to the end of one.
    pub fn path(&self, branch: usize) -> Vec<usize> {
        let mut path = Vec::new();
        let mut at = Some(branch);
        while let Some(i) = at.filter(|i| *i < self.0.len()) {
            path.push(i);
            at = self.0[i].upstream;
        }
        path.reverse();
        path
    }

    /// The length of pipe from the supply to the farthest end.
    pub fn longest(&self) -> Length {
        let to = |i| self.path(i).iter().map(|&b| self.0[b].length).sum();
        (0..self.0.len()).map(to).fold(Length::ZERO, Length::max)
    }
}

#[cfg(test)]
pub(super) mod tests {
    use super::super::{Capacity, Gas, TABLE_DROP};
    use super::*;

    /// IFGC appendix A, example 1: 60 ft to outlet A; the other lengths do not matter to the method and are invented.
    pub(crate) fn example() -> Tree {
        let branch = |name: &str, upstream, feet: f64, size, cfh: f64| Branch {
            name: name.to_owned(),
            upstream,
            length: Length::inches(feet * 12.0),
            size: Some(size),
            load: Some(Gas::Natural.heat_of(cfh)),
        };
        Tree::new(vec![
            branch("section 3", None, 20.0, Nominal::One, 0.0),
            branch("section 1", Some(0), 25.0, Nominal::ThreeQuarters, 0.0),
            branch("section 2", Some(0), 10.0, Nominal::ThreeQuarters, 0.0),
            branch("outlet A", Some(1), 15.0, Nominal::Half, 35.0),
            branch("outlet B", Some(1), 10.0, Nominal::ThreeQuarters, 75.0),
            branch("outlet C", Some(2), 10.0, Nominal::Half, 35.0),
            branch("outlet D", Some(2), 15.0, Nominal::ThreeQuarters, 100.0),
        ])
        .unwrap()
    }

    #[test]
    fn appendix_a_example_1_by_the_longest_length() {
        // Published (IFGC appendix A, example 1): loads and length; the sizes are values from memory.
        let tree = example();
        assert!((tree.longest().in_inches() / 12.0 - 60.0).abs() < 1e-9);
        let loads: Vec<_> = tree.loads().into_iter().map(Option::unwrap).collect();
        let cfh: Vec<_> = loads
            .iter()
            .map(|l| Gas::Natural.flow_of(*l).round())
            .collect();
        assert_eq!(cfh, [245.0, 110.0, 135.0, 35.0, 75.0, 35.0, 100.0]);
        for (branch, load) in tree.branches().iter().zip(loads) {
            let least = Nominal::least(Gas::Natural, load, tree.longest(), TABLE_DROP);
            assert_eq!(least, branch.size, "{}", branch.name);
            let found = Capacity::of(
                Gas::Natural,
                branch.size.unwrap(),
                tree.longest(),
                TABLE_DROP,
            );
            assert!(found.by_table.is_some() && found.carries(load));
        }
    }

    #[test]
    fn what_one_appliance_burns_not_known_is_not_known_upstream() {
        let mut branches = example().branches().to_vec();
        branches[5].load = None;
        let loads = Tree::new(branches).unwrap().loads();
        let known: Vec<_> = loads.iter().map(Option::is_some).collect();
        assert_eq!(known, [false, true, false, true, true, false, true]);
    }

    #[test]
    fn a_branch_that_feeds_itself_is_no_tree() {
        let mut branches = example().branches().to_vec();
        branches[1].upstream = Some(3);
        assert_eq!(Tree::new(branches), None);
        assert_eq!(Tree::new(Vec::new()).unwrap().longest(), Length::ZERO);
    }
}
