//! The site of the demo with 500 survey points and 10 days of hours: 30 ms at most.
//!
//! `cargo bench --bench site`

use islandwright::parts::{self, Assembly};
use islandwright::pipeline;
use islandwright::plan::Plan;
use islandwright::site::Site;
use std::fmt::Write;

fn main() {
    divan::main();
}

const DEMO: &str = include_str!("../params/garden-corner.yaml");

/// The demo with another survey and another forecast.
fn demo() -> (Plan, Assembly) {
    let text = without(&without(DEMO, "  survey:"), "pour:");
    let mut points = String::new();
    for i in 0..500 {
        let (x, y) = (
            f64::from(i % 25) * 7.0 - 20.0,
            f64::from(i / 25) * 7.0 - 80.0,
        );
        let z = 40.0 + 0.01 * x + 0.006 * y + 0.1 * (x * 0.3).sin();
        let _ = writeln!(points, "      - {{x: {x} in, y: {y} in, z: {z:.3} in}}");
    }
    let mut rows = String::new();
    for hour in 0..240 {
        let (day, of_day) = (10 + hour / 24, hour % 24);
        let warm = (f64::from(of_day - 9) / 24.0 * std::f64::consts::TAU).sin();
        let _ = writeln!(
            rows,
            "      2027-05-{day:02}T{of_day:02}:00,{:.0},{:.0},{:.0},{:.0}",
            80.0 + 15.0 * warm,
            50.0 - 25.0 * warm,
            8.0 + 5.0 * warm,
            (700.0 * warm).max(0.0)
        );
    }
    let survey = format!("site:\n  survey:\n    measured: down\n    points:\n{points}");
    let text = text.replacen("site:\n", &survey, 1);
    let text = format!(
        "{text}\npour:\n  forecast:\n    csv: |\n      time,air °F,humidity %,wind mph,sun W/m2\n{rows}"
    );
    let plan = pipeline::check(&text, pipeline::shipped_trade()).expect("the demo can be built");
    assert_eq!(
        plan.design.pour.forecast.as_ref().map(|f| f.hours.len()),
        Some(240)
    );
    assert_eq!(
        plan.design.site.survey.as_ref().map(|s| s.levels.len()),
        Some(500)
    );
    let assembly = parts::build(&plan);
    (plan, assembly)
}

/// A text without a group: from its line to the next one that stands as far out.
fn without(text: &str, group: &str) -> String {
    let depth = group.len() - group.trim_start().len();
    let mut skipping = false;
    let kept = text.lines().filter(|line| {
        let own = line.len() - line.trim_start().len();
        if line.trim_end() == group {
            skipping = true;
        } else if own <= depth && !line.trim().is_empty() {
            skipping = false;
        }
        !skipping
    });
    let mut kept = kept.collect::<Vec<_>>().join("\n");
    kept.push('\n');
    kept
}

#[divan::bench]
fn whole(bencher: divan::Bencher) {
    let (plan, assembly) = demo();
    bencher.bench(|| -> Site { pipeline::reckon_site(&plan, &assembly) });
}
