//! What is stronger, shorter or wider never turns out worse: rules asked along a row of values of one key.

#![expect(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use islandwright::design::{self, Change};
use islandwright::diagnostics::Verdict;
use islandwright::pipeline::shipped_trade;
use islandwright::plan;
use islandwright::rules::{self, Subject};

/// The gravest verdict of a rule on the sound island with some keys written otherwise; `None` where that cannot be built.
fn worst(code: &str, changes: &[(&str, &str)]) -> Option<Verdict> {
    let text = include_str!("cases/sound.yaml");
    let changes: Vec<_> = changes.iter().map(|(k, v)| Change::write(k, v)).collect();
    let design = design::from_text_changed(text, shipped_trade(), &changes).ok()?;
    let plan = plan::lay_out(design).ok()?;
    let answers = rules::ask(rules::rule(code).unwrap(), &Subject::new(&plan));
    answers.iter().map(|f| f.verdict).max()
}

/// Asks along values that make it ever better; gives the verdicts.
fn along(code: &str, key: &str, values: &[&str], fixed: &[(&str, &str)]) -> Vec<Verdict> {
    let of = |value: &&str| worst(code, &[fixed, &[(key, *value)]].concat());
    let verdicts: Vec<_> = values.iter().filter_map(of).collect();
    assert!(verdicts.len() > 3, "{code}, {key}: {verdicts:?}");
    for pair in verdicts.windows(2) {
        assert!(pair[1] <= pair[0], "{code} along {key}: {verdicts:?}");
    }
    verdicts
}

/// The same, and both ends of the row must differ, so that something was seen.
fn turns(code: &str, key: &str, values: &[&str], fixed: &[(&str, &str)]) {
    let verdicts = along(code, key, values, fixed);
    assert_ne!(
        verdicts.first(),
        verdicts.last(),
        "{code} along {key}: {verdicts:?}"
    );
}

const THICK: [&str; 8] = [
    "1 in", "1-1/4 in", "1-1/2 in", "2 in", "2-1/2 in", "3 in", "4 in", "5 in",
];
/// High enough for every thickness above the drawers.
const HIGH: (&str, &str) = ("levels.counter", "42 in");
const PLAIN: (&str, &str) = ("counter.reinforcement", "{corner_bars: true}");

#[test]
fn a_thicker_slab_never_fails_where_a_thinner_one_passed() {
    let bare = [HIGH, PLAIN, ("counter.brackets", "")];
    turns("slab-overhang-bending", "counter.thickness", &THICK, &bare);
    turns("slab-joints", "counter.thickness", &THICK, &[HIGH]);
    along("slab-overhang-shear", "counter.thickness", &THICK, &bare);
    along("slab-rail-bending", "counter.thickness", &THICK, &bare);
    along("ground-sliding", "counter.thickness", &THICK, &[HIGH]);
}

#[test]
fn a_longer_overhang_never_passes_where_a_shorter_one_failed() {
    let shorter = [
        "20 in", "16 in", "14 in", "12 in", "11 in", "10 in", "8 in", "6 in", "4 in", "2 in",
    ];
    let bare = [PLAIN, ("counter.brackets", "")];
    for code in ["slab-overhang-bending", "slab-overhang-practice"] {
        turns(code, "counter.overhang.seating", &shorter, &bare);
    }
    along(
        "ground-overturning",
        "counter.overhang.seating",
        &shorter,
        &bare,
    );
    along(
        "slab-overhang-shear",
        "counter.overhang.seating",
        &shorter,
        &bare,
    );
}

#[test]
fn more_vent_area_is_never_worse() {
    let wider = [
        "1 in", "2 in", "3 in", "4 in", "5 in", "6 in", "8 in", "10 in", "12 in",
    ];
    let own = "[{name: gas-vent-area, value: 12 sq in, source: the grill's instructions}]";
    let high = ("openings[high vent].sill", "25-3/4 in");
    let fixed = [high, ("limits", own)];
    turns(
        "gas-ventilation",
        "openings[high vent].width",
        &wider,
        &fixed,
    );
    turns(
        "gas-ventilation",
        "openings[low vent].width",
        &wider,
        &fixed,
    );
    let freer = ["5 %", "20 %", "35 %", "50 %", "75 %", "100 %"];
    let key = "openings[high vent].free_area";
    turns("gas-ventilation", key, &freer, &fixed);
}

#[test]
fn a_larger_gas_pipe_never_fails_where_a_smaller_one_passed() {
    let larger = ["1/2 in", "3/4 in", "1 in", "1-1/4 in"];
    let heat = [("appliances[grill].heat_input", "150,000 Btu/h")];
    for code in ["gas-pipe-size", "gas-pressure-drop"] {
        turns(code, "gas.pipes[from the house].size", &larger, &heat);
    }
}

#[test]
fn what_can_burn_is_never_worse_farther_off() {
    let farther: Vec<String> = (20..60)
        .step_by(4)
        .map(|y| {
            format!("[{{name: fence, kind: fence, combustible: true, at: {{x: -40 in, y: {y} in, z: 0 in}}, size: {{x: 200 in, y: 2 in, z: 60 in}}}}]")
        })
        .collect();
    let farther: Vec<&str> = farther.iter().map(String::as_str).collect();
    turns("heat-clearance", "site.objects", &farther, &[]);
}

/// A forecast of six hours of one weather as a flow list.
fn forecast(air: &str, humidity: u32, wind: u32) -> String {
    let hour = |h: u32| {
        format!(
            "{{at: 2027-05-14T{h:02}:00, air: {air}, humidity: {humidity} %, wind: {wind} mph, sun: 600 W/m2}}"
        )
    };
    let hours: Vec<_> = (6..14).map(hour).collect();
    format!("{{hours: [{}]}}", hours.join(", "))
}

#[test]
fn calmer_damper_and_cooler_air_never_makes_a_pour_worse() {
    let hot = [("pour.materials", "{bags: 90 °F, water: 80 °F}")];
    let rows = |all: Vec<String>, code: &str, fixed: &[(&str, &str)]| {
        let all: Vec<&str> = all.iter().map(String::as_str).collect();
        turns(code, "pour.forecast", &all, fixed);
    };
    let calmer = (0..40)
        .rev()
        .step_by(3)
        .map(|w| forecast("95 °F", 20, w))
        .collect();
    rows(calmer, "weather-evaporation", &hot);
    let damper = (0..100)
        .step_by(9)
        .map(|h| forecast("95 °F", h, 20))
        .collect();
    rows(damper, "weather-evaporation", &hot);
    let warmer = ["14 °F", "28 °F", "36 °F", "39 °F", "45 °F", "60 °F"];
    let warmer = warmer.map(|air| forecast(air, 60, 2)).to_vec();
    rows(warmer, "weather-cold-concrete", &[]);
    let cooler = [
        "120 °F", "110 °F", "100 °F", "96 °F", "92 °F", "85 °F", "70 °F",
    ];
    turns(
        "weather-hot-concrete",
        "pour.materials.bags",
        &cooler,
        &[("pour.materials.water", "80 °F")],
    );
    let faster = ["60 min", "40 min", "25 min", "15 min", "8 min", "4 min"];
    turns("slab-placing-time", "pour.batch_time", &faster, &[]);
    let sheltered = ["false", "true"];
    for key in ["pour.shade", "pour.windbreak"] {
        let found = sheltered.map(|v| {
            let windy = forecast("95 °F", 20, 25);
            worst(
                "weather-evaporation",
                &[hot[0], ("pour.forecast", &windy), (key, v)],
            )
        });
        assert!(found[1] <= found[0], "{key}: {found:?}");
    }
}
