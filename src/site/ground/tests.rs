//! The ground from levels to packs.

use super::{Form, Ground, reckon};
use crate::design::{Change, SpotLevel, Survey, from_text_changed, shipped_trade};
use crate::diagnostics::Place;
use crate::geometry::{Point2, Point3};
use crate::parts::{self, PartKind};
use crate::plan::{self, Plan};
use crate::units::Length;
use proptest::prelude::*;
use std::sync::LazyLock;

const SOUND: &str = include_str!("../../../tests/cases/sound.yaml");

fn plan_with(survey: &str) -> Plan {
    let changes = [Change::write("site.survey", survey)];
    plan::lay_out(from_text_changed(SOUND, shipped_trade(), &changes).unwrap()).unwrap()
}

fn ground(survey: &str) -> Ground {
    let plan = plan_with(survey);
    reckon(&plan, &parts::build(&plan)).unwrap()
}

/// Four corners round the island, which takes 0 to 120 by 0 to 30 in and 90 to 120 by -54 to 0 in.
fn corners(heights: [&str; 4]) -> String {
    let at = [(-24, -72), (144, -72), (-24, 54), (144, 54)];
    let point = |((x, y), z)| format!("{{x: {x} in, y: {y} in, z: {z}}}");
    let points: Vec<String> = at.into_iter().zip(heights).map(point).collect();
    format!("points: [{}]", points.join(", "))
}

#[test]
fn a_slope_is_packed_as_on_paper() {
    // Rising 1-3/4 in from x = -24 to 144 in: 1/96. The highest ground under the island is at its right end, x = 120 in;
    // at x = 0 it is 1-1/4 in lower. The sleepers' underside is 2 - 1-1/2 = 1/2 in above the datum.
    let ground = ground(&corners(["0 in", "1-3/4 in", "0 in", "1-3/4 in"]));
    let fitted = ground.fitted.unwrap();
    assert!((fitted.fall.slope * 96.0 - 1.0).abs() < 1e-9);
    assert_eq!(fitted.fall.words(), "to the left");
    assert!((fitted.datum.x - 120.0 * 25.4).abs() < 1e-6);
    assert!((fitted.survey_datum - 1.5 * 25.4).abs() < 1e-6);
    for pack in &fitted.packs {
        let below = (120.0 * 25.4 - pack.at.x) / 96.0;
        assert!((pack.ground + below).abs() < 1e-6 && (pack.gap - 12.7 - below).abs() < 1e-6);
        assert!(pack.rest().abs() <= 25.4 / 32.0 + 1e-9 && !pack.beyond);
    }
    let left = fitted.packs.iter().map(|p| p.gap).fold(0.0, f64::max);
    // 1-3/4 in from the left end: 118-1/4/96 + 1/2.
    assert!((left / 25.4 - (0.5 + 118.25 / 96.0)).abs() < 1e-6);
    assert!(
        ground
            .levels
            .iter()
            .all(|l| l.residual.abs() < 1e-9 && l.form == Form::Plain)
    );
}

#[test]
fn readings_down_are_heights_upside_down() {
    let up = ground(&corners(["-1 in", "-2 in", "-3 in", "-3-1/2 in"]));
    let down = format!(
        "measured: down\n{}",
        corners(["1 in", "2 in", "3 in", "3-1/2 in"])
    );
    let down = ground(&format!("{{{}}}", down.replace('\n', ", ")));
    assert_eq!(up, down);
}

#[test]
fn a_grid_with_a_hole_is_the_same_as_its_points() {
    let grid = "{grid: {from: {x: -2 ft, y: -6 ft}, step: {x: 7 ft, y: 5 ft}, rows: [[1 in, 2 in, 3 in], [1 in, ~, 2 in], ['-', 1 in, 1-1/2 in]]}}";
    let points = [
        (-24, -72, "1 in"),
        (60, -72, "2 in"),
        (144, -72, "3 in"),
        (-24, -12, "1 in"),
        (144, -12, "2 in"),
        (60, 48, "1 in"),
        (144, 48, "1-1/2 in"),
    ];
    let points = points.map(|(x, y, z)| format!("{{x: {x} in, y: {y} in, z: {z}}}"));
    let (grid, points) = (
        ground(grid),
        ground(&format!("{{points: [{}]}}", points.join(", "))),
    );
    let names: Vec<&str> = grid.levels.iter().map(|l| l.name.as_str()).collect();
    assert_eq!(
        names,
        ["R1-1", "R1-2", "R1-3", "R2-1", "R2-3", "R3-2", "R3-3"]
    );
    let packed = |ground: Ground| ground.fitted.unwrap().packs;
    for (a, b) in packed(grid).iter().zip(packed(points)) {
        assert_eq!(a.pieces, b.pieces);
        assert!((a.gap - b.gap).abs() < 1e-6);
    }
}

#[test]
fn a_hollow_holds_water_and_stands_off_and_far_ground_is_sparse() {
    let flat = corners(["0 in", "0 in", "0 in", "0 in"]);
    let more = "{x: 48 in, y: 15 in, z: -1 in}, {x: 20 in, y: -40 in, z: 0 in}]";
    let ground = ground(&format!("{{{}, {more}}}", flat.trim_end_matches(']')));
    let hollow = &ground.levels[4];
    assert_eq!((hollow.form, hollow.under), (Form::Hollow, true));
    assert!((hollow.pool.unwrap() - 25.4).abs() < 1e-6);
    let fitted = ground.fitted.unwrap();
    // The usual 4 ft: the nearest level to the right end of the cook run is at (144, 54) in, more than 2 ft off.
    let far = |p: Point2| {
        let pack = fitted
            .packs
            .iter()
            .min_by(|a, b| (a.at - p).norm().total_cmp(&(b.at - p).norm()));
        pack.unwrap().sparse
    };
    assert!(far(Point2::new(96.0 * 25.4, -10.0 * 25.4)));
    assert!(!far(Point2::new(48.0 * 25.4, 0.0)));
}

#[test]
fn levels_that_make_no_plane_are_listed_and_nothing_else() {
    for survey in [
        "{}",
        "{points: []}",
        "{points: [{x: 1 in, y: 2 in, z: 0 in}]}",
    ] {
        let ground = ground(survey);
        assert!(ground.fitted.is_none() && ground.levels.len() < 2);
    }
}

#[test]
fn packs_lie_in_the_middle_of_the_sleepers_whose_marks_they_bear() {
    let plan = plan_with(&corners(["0 in", "1 in", "0 in", "1 in"]));
    let assembly = parts::build(&plan);
    let fitted = reckon(&plan, &assembly).unwrap().fitted.unwrap();
    let mut seen = std::collections::BTreeSet::new();
    for pack in &fitted.packs {
        let part = assembly
            .parts
            .iter()
            .find(|p| p.mark == pack.sleeper)
            .unwrap();
        let bounds = assembly.solid(part).bounds();
        let ends = [bounds.low, bounds.high].map(|c| part.placement * c);
        let (low, high) = (ends[0].inf(&ends[1]), ends[0].sup(&ends[1]));
        let (near, far) = (pack.at - low.xy(), high.xy() - pack.at);
        // Half the sleeper's width from either side, and no nearer to its ends.
        assert!((near.min().min(far.min()) - 44.45).abs() < 1e-6, "{pack:?}");
        assert!((pack.gap + pack.ground - low.z).abs() < 1e-6);
        seen.insert(pack.sleeper.clone());
    }
    let sleepers = assembly
        .parts
        .iter()
        .filter(|p| p.kind == PartKind::Sleeper);
    assert_eq!(seen.len(), sleepers.count());
}

static PLAN: LazyLock<(Plan, parts::Assembly)> = LazyLock::new(|| {
    let plan = plan_with("{}");
    let assembly = parts::build(&plan);
    (plan, assembly)
});

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]
    #[test]
    fn shims_are_never_negative_and_the_frame_is_level_to_the_smallest(
        levels in proptest::collection::vec((-3000.0..6000.0f64, -3000.0..3000.0f64, -60.0..60.0f64), 3..40),
        thinnest in 1..8_u32,
    ) {
        let (mut plan, assembly) = (PLAN.0.clone(), &PLAN.1);
        let smallest = 0.5 * f64::from(thinnest);
        let level = |(x, y, z): &(f64, f64, f64)| SpotLevel { name: String::new(), at: Point3::new(*x, *y, *z), place: Place::default() };
        plan.design.site.survey = Some(Survey {
            levels: levels.iter().map(level).collect(),
            reading: Length::millimetres(3.0),
            shims: [1.0, 4.0].map(|k| Length::millimetres(k * smallest)).to_vec(),
            ..Survey::default()
        });
        let Some(fitted) = reckon(&plan, assembly).unwrap().fitted else { return Ok(()) };
        let underside = 12.7;
        let mut tops = Vec::new();
        for pack in &fitted.packs {
            prop_assert!(pack.gap >= underside - 1e-9 && pack.height >= 0.0 && pack.ground <= 1e-9);
            prop_assert!(pack.rest().abs() <= smallest / 2.0 + 1e-3);
            tops.push(pack.ground + pack.height);
        }
        let (low, high) = tops.iter().fold((f64::MAX, f64::MIN), |(l, h), t| (l.min(*t), h.max(*t)));
        prop_assert!(high - low <= smallest + 2e-3, "{}", high - low);
        let sum: u32 = fitted.packs.iter().flat_map(|p| &p.pieces).sum();
        prop_assert_eq!(sum, fitted.pieces.iter().sum::<u32>());
    }
}
