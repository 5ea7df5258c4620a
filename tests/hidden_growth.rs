//! The work of hidden lines grows no worse than n log n with the members of a chain: counted, so that it is the same on
//! every machine. `benches/hidden.rs` times it up to 10,000 members.

#![expect(
    clippy::unwrap_used,
    reason = "the chain is written here and can be built"
)]

#[path = "../benches/stairs/mod.rs"]
mod stairs;

use islandwright::drawing::hidden::{Corner, Effort, Placed, Shape, View, effort};
use islandwright::{parts, pipeline};

fn work(runs: usize, view: &View) -> Effort {
    let plan = pipeline::check(&stairs::text(runs), pipeline::shipped_trade()).unwrap();
    let assembly = parts::build(&plan);
    let shapes: Vec<_> = assembly
        .solids
        .iter()
        .map(|s| Shape::new(&s.faceted(0.25)))
        .collect();
    let placed = assembly.parts.iter().map(|part| Placed {
        shape: &shapes[part.solid.0],
        motion: view.of_part(&part.placement),
    });
    effort(&placed.collect::<Vec<_>>())
}

/// The steps of the largest chain, held against those of the smallest times what n log n allows, n being edges.
fn grows_no_worse_than_n_log_n(view: &View, runs: &[usize]) {
    let per_n_log_n = |runs: usize| {
        let Effort { edges, steps, .. } = work(runs, view);
        let n = edges as f64;
        (n, steps as f64 / (n * n.log2()))
    };
    let found: Vec<_> = runs.iter().map(|&r| per_n_log_n(r)).collect();
    let (first, last) = (found[0], found[found.len() - 1]);
    let doublings = runs.len() as f64 - 1.0;
    assert!(
        last.0 > 0.7 * first.0 * 2.0_f64.powf(doublings),
        "{found:?}"
    );
    assert!(last.1 <= first.1, "{found:?}");
}

#[test]
fn seen_from_above() {
    grows_no_worse_than_n_log_n(&View::from_above(), &[4, 8, 16]);
}

#[test]
fn seen_from_the_front() {
    let front = View::from_direction(-nalgebra::Vector3::y());
    grows_no_worse_than_n_log_n(&front, &[4, 8, 16]);
}

#[test]
fn seen_from_a_corner() {
    grows_no_worse_than_n_log_n(&View::isometric(Corner::ALL[1]), &[2, 4, 8]);
}
