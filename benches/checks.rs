//! The checks on the demo: 20 ms at most, all rules together.
//!
//! `cargo bench --bench checks`

use islandwright::pipeline::{self, shipped_trade};
use islandwright::plan::Plan;
use islandwright::rules::{self, Subject};

fn main() {
    divan::main();
}

const DEMO: &str = include_str!("../params/garden-corner.yaml");

fn demo() -> Plan {
    pipeline::check(DEMO, shipped_trade()).expect("the demo can be built")
}

/// All rules, the parts that some of them ask for included.
#[divan::bench]
fn all_rules(bencher: divan::Bencher) {
    let plan = demo();
    bencher.bench(|| rules::check(&Subject::new(&plan)));
}

/// All rules once the parts are there.
#[divan::bench]
fn all_rules_with_parts(bencher: divan::Bencher) {
    let plan = demo();
    let with_parts = || {
        let subject = Subject::new(&plan);
        subject.assembly();
        subject
    };
    let asked = bencher.with_inputs(with_parts);
    asked.bench_local_values(|subject| rules::check(&subject));
}

/// What `check` does: read, plan, reckon, ask.
#[divan::bench]
fn examine() -> usize {
    pipeline::examine(DEMO, shipped_trade()).map_or(0, |f| f.len())
}
