//! Hidden lines over chains that grow from 100 to 10,000 members: the time must grow no worse than n log n.
//!
//! `cargo bench --bench hidden`; `tests/hidden_growth.rs` holds the counted work, which is the same on every machine.

mod stairs;

use islandwright::drawing::hidden::{Corner, Placed, Shape, View, effort, visible, with_hidden};
use islandwright::parts::{self, Assembly};
use islandwright::pipeline;

fn main() {
    divan::main();
}

/// About 100, 1,000, 2,500, 5,000 and 10,000 members.
const RUNS: [usize; 5] = [2, 18, 46, 92, 184];

/// A chain with its shapes made ready, as a set of drawings shares them.
struct Chain {
    assembly: Assembly,
    shapes: Vec<Shape>,
}

impl Chain {
    fn new(runs: usize) -> Self {
        let text = stairs::text(runs);
        let plan =
            pipeline::check(&text, pipeline::shipped_trade()).expect("the chain can be built");
        let assembly = parts::build(&plan);
        let shapes = assembly
            .solids
            .iter()
            .map(|s| Shape::new(&s.faceted(0.25)))
            .collect();
        Self { assembly, shapes }
    }

    fn placed(&self, view: &View) -> Vec<Placed<'_>> {
        let parts = self.assembly.parts.iter();
        let placed = parts.map(|part| Placed {
            shape: &self.shapes[part.solid.0],
            motion: view.of_part(&part.placement),
        });
        placed.collect()
    }
}

fn isometric() -> View {
    View::isometric(Corner::ALL[0])
}

fn front() -> View {
    View::from_direction(-nalgebra::Vector3::y())
}

fn time(bencher: divan::Bencher, runs: usize, view: &View) {
    let chain = Chain::new(runs);
    let bodies = chain.placed(view);
    println!("{} members: {:?}", bodies.len(), effort(&bodies));
    bencher
        .counter(divan::counter::ItemsCount::new(bodies.len()))
        .bench(|| visible(&bodies));
}

#[divan::bench(args = RUNS, sample_count = 10)]
fn from_above(bencher: divan::Bencher, runs: usize) {
    time(bencher, runs, &View::from_above());
}

#[divan::bench(args = RUNS, sample_count = 10)]
fn from_the_front(bencher: divan::Bencher, runs: usize) {
    time(bencher, runs, &front());
}

#[divan::bench(args = RUNS, sample_count = 10)]
fn from_a_corner(bencher: divan::Bencher, runs: usize) {
    time(bencher, runs, &isometric());
}

#[divan::bench(args = RUNS, sample_count = 10)]
fn from_a_corner_with_hidden_pieces(bencher: divan::Bencher, runs: usize) {
    let chain = Chain::new(runs);
    let bodies = chain.placed(&isometric());
    bencher
        .counter(divan::counter::ItemsCount::new(bodies.len()))
        .bench(|| with_hidden(&bodies, |_| true));
}
