//! The drawing set of the demo: drawn, written in each format, and all of it as `build` does. The whole set is to take less
//! than 300 ms.
//!
//! `cargo bench --bench sheets`; `benches/hidden` times hidden lines as islands grow.

use islandwright::drawing::{self, Sheet};
use islandwright::parts::{self, Assembly};
use islandwright::pipeline::{self, OutputGroup};
use islandwright::plan::Plan;
use islandwright::write::{self, PdfInfo, PdfKind};

fn main() {
    divan::main();
}

const DEMO: &str = include_str!("../params/garden-corner.yaml");

fn demo() -> (Plan, Assembly) {
    let plan = pipeline::check(DEMO, pipeline::shipped_trade()).expect("the demo can be built");
    let assembly = parts::build(&plan);
    (plan, assembly)
}

fn sheets() -> Vec<Sheet> {
    let (plan, assembly) = demo();
    drawing::sheets(&plan, &assembly, &pipeline::told(&plan, &assembly))
}

/// All sheets drawn, and written as one PDF, as SVG and as DXF.
#[divan::bench]
fn whole_set(bencher: divan::Bencher) {
    let (plan, assembly) = demo();
    let told = pipeline::told(&plan, &assembly);
    let set = || -> OutputGroup {
        let set = pipeline::drawing_set(&plan, &assembly, &told);
        set.expect("the set can be written").0
    };
    bencher.bench(set);
}

#[divan::bench]
fn drawn(bencher: divan::Bencher) {
    let (plan, assembly) = demo();
    let told = pipeline::told(&plan, &assembly);
    bencher.bench(|| drawing::sheets(&plan, &assembly, &told));
}

#[divan::bench]
fn as_pdf(bencher: divan::Bencher) {
    let sheets = sheets();
    let sheets: Vec<&Sheet> = sheets.iter().collect();
    let info = PdfInfo {
        title: "Drawing set".to_owned(),
        kind: PdfKind::Archive,
        ..PdfInfo::default()
    };
    bencher.bench(|| write::pdf(&sheets, &info).expect("sheets have sizes that pages have"));
}

#[divan::bench]
fn as_svg(bencher: divan::Bencher) {
    let sheets = sheets();
    bencher.bench(|| sheets.iter().map(write::svg).collect::<Vec<_>>());
}

#[divan::bench]
fn as_dxf(bencher: divan::Bencher) {
    let sheets = sheets();
    bencher.bench(|| sheets.iter().map(write::dxf).collect::<Vec<_>>());
}
