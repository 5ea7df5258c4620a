//! The drop in pressure from the supply to each end.

use super::{Gas, Tree, drop_over};
use crate::units::Stress;

/// The drop in pressure from the supply to the end of each branch, by the low-pressure equation branch by branch; `None`
/// where a size or a load on the way is not known.
pub fn drops(tree: &Tree, gas: Gas) -> Vec<Option<Stress>> {
    let loads = tree.loads();
    let own = |i: usize| {
        let branch = &tree.branches()[i];
        Some(drop_over(gas, branch.size?, branch.length, loads[i]?))
    };
    let along = |i: usize| tree.path(i).into_iter().map(own).sum();
    (0..tree.branches().len()).map(along).collect()
}

#[cfg(test)]
mod tests {
    use super::super::{Nominal, TABLE_DROP, tree::tests::example};
    use super::*;

    #[test]
    fn sizes_by_the_longest_length_never_use_up_more_than_they_may() {
        // Published (IFGC appendix A, example 1): the whole is designed for 0.5 in w.c.
        let found = drops(&example(), Gas::Natural);
        for drop in &found {
            assert!(drop.is_some_and(|d| d > Stress::ZERO && d <= TABLE_DROP));
        }
        // Farther along the same path more is lost.
        assert!(found[0] < found[1] && found[1] < found[3]);
    }

    #[test]
    fn a_smaller_pipe_on_the_way_loses_more_and_an_unknown_one_is_unknown() {
        let before = drops(&example(), Gas::Natural)[3];
        let change = |size| {
            let mut branches = example().branches().to_vec();
            branches[1].size = size;
            drops(&Tree::new(branches).unwrap(), Gas::Natural)
        };
        assert!(change(Some(Nominal::Half))[3] > before);
        let unknown = change(None);
        assert_eq!((unknown[3], unknown[4]), (None, None));
        assert!(unknown[5].is_some());
    }
}
