//! The printable scale model of the demo: 2 s at most.
//!
//! `cargo bench --bench scale_model`

use islandwright::mesh::scale_model::{ScaleModel, scale_model};
use islandwright::pipeline;
use islandwright::{parts, plan::Plan};

fn main() {
    divan::main();
}

const DEMO: &str = include_str!("../params/garden-corner.yaml");
const WIDE: &str = include_str!("../params/poolside-u.yaml");
/// The demo on a bed on which nothing fits whole.
const SMALL_BED: &str = "\nscale_model: {scale: 1:10, printer: {bed: {x: 150 mm, y: 150 mm}}}\n";

fn planned(text: &str) -> Plan {
    pipeline::check(text, pipeline::shipped_trade()).expect("the example can be built")
}

fn made(text: &str, bencher: divan::Bencher) {
    let plan = planned(text);
    let assembly = parts::build(&plan);
    bencher.bench(|| -> Option<ScaleModel> { scale_model(&plan, &assembly).0 });
}

#[divan::bench]
fn demo(bencher: divan::Bencher) {
    made(DEMO, bencher);
}

#[divan::bench]
fn demo_in_many_pieces(bencher: divan::Bencher) {
    made(&format!("{DEMO}{SMALL_BED}"), bencher);
}

#[divan::bench]
fn three_runs_with_a_round_edge(bencher: divan::Bencher) {
    made(WIDE, bencher);
}
