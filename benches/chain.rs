//! A generated chain of runs that grows: the time must grow with the members, and 10,000 members stay under 1 GiB.
//!
//! `cargo bench --bench chain` times plan, parts and models; `cargo bench --bench chain -- --text 200` prints the
//! parameter file of such a chain, to build it as a whole process: `… > chain.yaml`, then
//! `/usr/bin/time -v target/release/islandwright build chain.yaml`.

mod stairs;

use islandwright::mesh::Model;
use islandwright::plan::Plan;
use islandwright::{parts, pipeline, write};
use stairs::text;

fn main() {
    let mut arguments = std::env::args().skip_while(|a| a != "--text").skip(1);
    match arguments.next().and_then(|n| n.parse().ok()) {
        Some(runs) => print!("{}", text(runs)),
        None => divan::main(),
    }
}

fn plan(runs: usize) -> Plan {
    pipeline::check(&text(runs), pipeline::shipped_trade()).expect("the chain can be built")
}

const RUNS: [usize; 4] = [15, 30, 60, 120];

#[divan::bench(args = RUNS, sample_count = 10)]
fn read_and_plan(runs: usize) -> Plan {
    plan(runs)
}

#[divan::bench(args = RUNS, sample_count = 10)]
fn parts_of_the_plan(bencher: divan::Bencher, runs: usize) {
    let plan = plan(runs);
    let members = parts::build(&plan).parts.len();
    bencher
        .counter(divan::counter::ItemsCount::new(members))
        .bench(|| parts::build(&plan));
}

#[divan::bench(args = RUNS, sample_count = 10)]
fn models(bencher: divan::Bencher, runs: usize) {
    let assembly = parts::build(&plan(runs));
    bencher
        .counter(divan::counter::ItemsCount::new(assembly.parts.len()))
        .bench(|| {
            let model = Model::new(&assembly, 0.02).expect("sound surfaces");
            write::stl(&model.selection(&assembly, None))
        });
}
