//! The stages of a build one by one, on the demo, and on straight chains that grow.
//!
//! `cargo bench --bench stages`; the whole process is timed by `benches/whole`.

use islandwright::catalog::TRADE_FILES;
use islandwright::mesh::Model;
use islandwright::pipeline::{self, Options, TradeData};
use islandwright::plan::Plan;
use islandwright::units::Length;
use islandwright::{parts, takeoff, write};

fn main() {
    divan::main();
}

const DEMO: &str = include_str!("../params/garden-corner.yaml");
const TOLERANCE: f64 = 0.02;

fn demo() -> Plan {
    pipeline::check(DEMO, pipeline::shipped_trade()).expect("the demo can be built")
}

#[divan::bench]
fn read_and_plan() -> Plan {
    demo()
}

/// What every run of the program pays for its trade data: 3 ms at most.
#[divan::bench]
fn shipped_trade_data() -> TradeData {
    let mut data = TradeData::default();
    for (_, text) in TRADE_FILES {
        pipeline::add_trade(&mut data, text);
    }
    data
}

#[divan::bench]
fn parts_of_the_plan(bencher: divan::Bencher) {
    let plan = demo();
    bencher.bench(|| parts::build(&plan));
}

#[divan::bench]
fn takeoff_of_the_parts(bencher: divan::Bencher) {
    let plan = demo();
    let assembly = parts::build(&plan);
    bencher.bench(|| takeoff::reckon(&plan, &assembly));
}

#[divan::bench]
fn mesh_of_the_parts(bencher: divan::Bencher) {
    let assembly = parts::build(&demo());
    bencher.bench(|| Model::new(&assembly, TOLERANCE).expect("sound surfaces"));
}

#[divan::bench]
fn stl_of_the_mesh(bencher: divan::Bencher) {
    let assembly = parts::build(&demo());
    let model = Model::new(&assembly, TOLERANCE).expect("sound surfaces");
    bencher.bench(|| write::stl(&model.selection(&assembly, None)));
}

#[divan::bench]
fn parts_list(bencher: divan::Bencher) {
    let assembly = parts::build(&demo());
    let model = Model::new(&assembly, TOLERANCE).expect("sound surfaces");
    bencher.bench(|| write::parts_list(&assembly, &model));
}

#[divan::bench]
fn everything(bencher: divan::Bencher) {
    let options = Options {
        tolerance: Length::millimetres(TOLERANCE),
        ..Options::default()
    };
    bencher.bench(|| {
        pipeline::build(DEMO, pipeline::shipped_trade(), &options, &mut |_| ())
            .expect("the demo can be built")
    });
}
