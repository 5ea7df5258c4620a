//! An answer held against its problem, by other means than it was found.

use super::{Answer, Leaf, Problem, Sheet};

/// A rectangle by its edges: left, lower, right, upper.
type Edges = [u64; 4];

fn edges(leaf: &Leaf) -> Edges {
    let [x, y, dx, dy] = [leaf.x, leaf.y, leaf.dx, leaf.dy].map(u64::from);
    [x, y, x + dx, y + dy]
}

/// Panics where the answer is not one.
pub(super) fn prove(problem: &Problem, answer: &Answer) {
    let mut found = answer.too_large.clone();
    for sheet in &answer.sheets {
        let stock = problem.stock[sheet.stock];
        let whole = [0, 0, u64::from(stock.length), u64::from(stock.width)];
        for leaf in &sheet.leaves {
            prove_leaf(problem, leaf, whole);
            found.extend(leaf.demand);
        }
        let kerf = u64::from(problem.kerf);
        let leaves: Vec<_> = sheet.leaves.iter().map(edges).collect();
        assert!(
            sheet.leaves.iter().any(|l| l.demand.is_some()),
            "an empty sheet"
        );
        prove_apart(&leaves, kerf);
        assert!(
            can_be_cut(&leaves, kerf),
            "no edge-to-edge cuts part {leaves:?}"
        );
        prove_cuts(sheet, whole, kerf);
    }
    found.sort_unstable();
    assert!(
        found.into_iter().eq(0..problem.demands.len()),
        "each demand once"
    );
    let cost = answer
        .sheets
        .iter()
        .map(|s| u128::from(problem.stock[s.stock].cost))
        .sum::<u128>();
    assert_eq!(u128::from(answer.cost), cost.min(u128::from(u64::MAX)));
    assert!(
        answer.bound <= answer.cost,
        "{} for {}",
        answer.cost,
        answer.bound
    );
    prove_too_large(problem, answer);
}

fn prove_leaf(problem: &Problem, leaf: &Leaf, whole: Edges) {
    let at = edges(leaf);
    assert!(
        leaf.dx > 0 && leaf.dy > 0 && at[2] <= whole[2] && at[3] <= whole[3],
        "{leaf:?}"
    );
    let Some(d) = leaf.demand.map(|d| problem.demands[d]) else {
        return;
    };
    if leaf.turned {
        assert!(d.may_turn);
        assert_eq!((leaf.dx, leaf.dy), (d.width, d.length));
    } else {
        assert_eq!((leaf.dx, leaf.dy), (d.length, d.width));
    }
}

fn prove_apart(leaves: &[Edges], kerf: u64) {
    for (i, a) in leaves.iter().enumerate() {
        for b in &leaves[i + 1..] {
            let beside = a[2] + kerf <= b[0] || b[2] + kerf <= a[0];
            let above = a[3] + kerf <= b[1] || b[3] + kerf <= a[1];
            assert!(beside || above, "{a:?} meets {b:?}");
        }
    }
}

/// Whether some line from edge to edge parts them, and both sides in turn.
pub(super) fn can_be_cut(leaves: &[Edges], kerf: u64) -> bool {
    leaves.len() < 2
        || (0..2).any(|axis| {
            let mut sorted = leaves.to_vec();
            sorted.sort_by_key(|l| l[axis]);
            let mut reach = 0;
            // Any line will do: a cut never spoils a cut that could be made before it.
            let line = (1..sorted.len()).find(|i| {
                reach = reach.max(sorted[i - 1][axis + 2]);
                reach + kerf <= sorted[*i][axis]
            });
            line.is_some_and(|i| can_be_cut(&sorted[..i], kerf) && can_be_cut(&sorted[i..], kerf))
        })
}

/// Saws the sheet up in the order of the cuts: each runs from edge to edge of one part, and the leaves are what is left.
fn prove_cuts(sheet: &Sheet, whole: Edges, kerf: u64) {
    let mut parts = vec![whole];
    for cut in &sheet.cuts {
        let [x0, y0, x1, y1] = [cut.0, cut.1, cut.2, cut.3].map(u64::from);
        let hit = parts.iter().position(|p| {
            if x0 == x1 {
                p[0] < x0 && x0 < p[2] && [p[1], p[3]] == [y0, y1]
            } else {
                y0 == y1 && p[1] < y0 && y0 < p[3] && [p[0], p[2]] == [x0, x1]
            }
        });
        let part =
            parts.swap_remove(hit.unwrap_or_else(|| panic!("{cut:?} parts none of {parts:?}")));
        let (low, high) = if x0 == x1 {
            (
                [part[0], part[1], x0, part[3]],
                [x0 + kerf, part[1], part[2], part[3]],
            )
        } else {
            (
                [part[0], part[1], part[2], y0],
                [part[0], y0 + kerf, part[2], part[3]],
            )
        };
        parts.extend(
            [low, high]
                .into_iter()
                .filter(|p| p[0] < p[2] && p[1] < p[3]),
        );
    }
    let mut leaves: Vec<_> = sheet.leaves.iter().map(edges).collect();
    leaves.sort_unstable();
    parts.sort_unstable();
    assert_eq!(leaves, parts, "the cuts leave something else");
}

/// What was left out fits on nothing, what was laid fits on something.
fn prove_too_large(problem: &Problem, answer: &Answer) {
    for (i, d) in problem.demands.iter().enumerate() {
        let fits = problem.stock.iter().any(|s| {
            let lies = |l: u32, w: u32| 0 < l && l <= s.length && 0 < w && w <= s.width;
            lies(d.length, d.width) || d.may_turn && lies(d.width, d.length)
        });
        assert_eq!(fits, !answer.too_large.contains(&i), "{d:?}");
    }
}
