//! The model formats of the demo, one by one and all together.
//!
//! `cargo bench --bench formats`; all together, the meshes included, must stay under 200 ms (the scale model is timed by its
//! own bench).

use islandwright::mesh::{Model, SHOWN_TOLERANCE, Showing};
use islandwright::parts::{self, Assembly};
use islandwright::pipeline::{self, OutputGroup};
use islandwright::plan::Plan;
use islandwright::units::Length;
use islandwright::write::{self, threemf};

fn main() {
    divan::main();
}

const DEMO: &str = include_str!("../params/garden-corner.yaml");
const TOLERANCE: f64 = 0.02;

fn demo() -> (Plan, Assembly) {
    let plan = pipeline::check(DEMO, pipeline::shipped_trade()).expect("the demo can be built");
    let assembly = parts::build(&plan);
    (plan, assembly)
}

fn meshed(assembly: &Assembly) -> Model {
    Model::new(assembly, TOLERANCE).expect("sound surfaces")
}

/// Everything in `models/`, from the parts on: 200 ms at most.
#[divan::bench]
fn all_formats(bencher: divan::Bencher) {
    let (plan, assembly) = demo();
    bencher.bench(|| -> OutputGroup {
        pipeline::models(&plan, &assembly, Length::millimetres(TOLERANCE)).expect("sound models")
    });
}

#[divan::bench]
fn meshes(bencher: divan::Bencher) {
    let (_, assembly) = demo();
    bencher.bench(|| meshed(&assembly));
}

#[divan::bench]
fn stl(bencher: divan::Bencher) {
    let (_, assembly) = demo();
    let model = meshed(&assembly);
    bencher.bench(|| write::stl(&model.selection(&assembly, None)));
}

#[divan::bench]
fn three_mf(bencher: divan::Bencher) {
    let (_, assembly) = demo();
    let model = meshed(&assembly);
    let grey = |part: &parts::Part| threemf::Material {
        name: part.material.clone(),
        srgb: [128; 3],
    };
    bencher.bench(|| {
        let document = threemf::island(&model.selection(&assembly, None), "demo", grey);
        write::threemf(&document).expect("an archive")
    });
}

#[divan::bench]
fn step(bencher: divan::Bencher) {
    let (plan, assembly) = demo();
    let runs: Vec<&str> = plan.design.runs.iter().map(|r| r.name.as_str()).collect();
    let titles = write::StepTitles {
        island: "demo",
        runs: &runs,
    };
    bencher.bench(|| write::step(&assembly, &titles).expect("closed solids"));
}

/// The coarser surfaces of what is only looked at.
#[divan::bench]
fn shown_meshes(bencher: divan::Bencher) {
    let (_, assembly) = demo();
    bencher.bench(|| Model::new(&assembly, SHOWN_TOLERANCE).expect("sound surfaces"));
}

#[divan::bench]
fn glb(bencher: divan::Bencher) {
    let (plan, assembly) = demo();
    let model = Model::new(&assembly, SHOWN_TOLERANCE).expect("sound surfaces");
    bencher.bench(|| write::glb(&Showing::of(&plan, &assembly, &model)));
}

#[divan::bench]
fn usdz(bencher: divan::Bencher) {
    let (plan, assembly) = demo();
    let model = Model::new(&assembly, SHOWN_TOLERANCE).expect("sound surfaces");
    bencher.bench(|| write::usdz(&Showing::of(&plan, &assembly, &model)).expect("an archive"));
}
