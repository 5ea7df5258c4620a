//! The stages of a build one by one, on the demo, and on straight chains that grow.
//!
//! `cargo bench --bench stages`; the whole process is timed by `benches/whole`.

use islandwright::mesh::Model;
use islandwright::pipeline::{self, Options};
use islandwright::plan::Plan;
use islandwright::units::Length;
use islandwright::{drawing, parts, write};

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

#[divan::bench]
fn parts_of_the_plan(bencher: divan::Bencher) {
    let plan = demo();
    bencher.bench(|| parts::build(&plan));
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
fn drawings(bencher: divan::Bencher) {
    let plan = demo();
    let assembly = parts::build(&plan);
    bencher.bench(|| {
        drawing::sheets(&plan, &assembly)
            .iter()
            .map(write::svg)
            .collect::<Vec<_>>()
    });
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
