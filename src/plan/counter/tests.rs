//! Counters worked on paper, and counters that cannot be.

use super::{CounterPlan, SideKind};
use crate::design::sample::{design, mm, placed, run, tile_band};
use crate::design::{
    Appliance, Design, EdgeProfile, Front, PlanCorner, Side, Station, Turn, Turndown,
};
use crate::diagnostics::Place;
use crate::geometry::{Outline, Point2, Solid};
use crate::plan::lay_out;
use crate::units::Length;
use std::f64::consts::PI;

const EASED: EdgeProfile = EdgeProfile::Square {
    eased: Length::millimetres(4.0),
};

fn counter(design: Design) -> CounterPlan {
    lay_out(design)
        .unwrap_or_else(|findings| panic!("{findings:?}"))
        .counter
}

/// Frame 3000 × 900, cladding 22; overhangs 40 and at the seating side 250: the counter's sides stand 62 and 272
/// outside the frame.
fn straight(walls: &[Side]) -> Design {
    design(vec![run("cook", 3000.0, None, walls)])
}

/// The second run, 2600 long, goes towards −y from (2100, 900); its working face is x = 2100.
fn corner() -> Design {
    design(vec![
        run("cook", 3000.0, None, &[]),
        run("serve", 2600.0, Some(Turn::Right), &[]),
    ])
}

fn dropped(mut d: Design, depth: f64, width: f64) -> Design {
    d.counter.turndown = Some(Turndown {
        depth: mm(depth),
        width: mm(width),
    });
    d.counter.turndown_sides = Side::ALL.to_vec();
    d
}

fn appliance(name: &str, run: usize, at: f64, radius: f64, front: Front) -> Appliance {
    Appliance {
        rating: crate::design::Rating::default(),
        name: name.to_owned(),
        kind: name.to_owned(),
        place: Place::default(),
        run,
        station: placed(Station::FromLeft(Length::millimetres(at))),
        cutout_width: mm(500.0),
        cutout_depth: mm(400.0),
        corner_radius: mm(radius),
        body_width: mm(480.0),
        body_depth: mm(380.0),
        body_height: mm(250.0),
        flange: mm(15.0),
        front,
    }
}

fn open_front() -> Front {
    Front::Open {
        panel_height: mm(250.0),
        reach: mm(500.0),
    }
}

fn closed_front(setback: f64) -> Front {
    Front::Closed {
        setback: mm(setback),
    }
}

fn assert_corners(outline: &Outline, expected: &[(f64, f64)]) {
    let found: Vec<Point2> = outline.vertices().iter().map(|v| v.at).collect();
    assert_points(&found, expected);
}

fn assert_points(found: &[Point2], expected: &[(f64, f64)]) {
    assert_eq!(found.len(), expected.len(), "{found:?}");
    for (f, e) in found.iter().zip(expected) {
        assert!(
            (f.x - e.0).abs() < 1e-6 && (f.y - e.1).abs() < 1e-6,
            "{found:?} for {expected:?}"
        );
    }
}

fn near(found: f64, expected: f64) {
    assert!(
        (found / expected - 1.0).abs() < 1e-9,
        "{found} for {expected}"
    );
}

#[test]
fn a_straight_counter_with_notch_and_sink_is_as_on_paper() {
    // Outside: x −62 … 3062, y −62 … 1172. The grill, 500 wide at 800, breaks the front from 550 to 1050 and reaches
    // 500 behind the frame's face. The sink, 500 × 400 at 1600, is set back 150.
    let mut d = dropped(straight(&[]), 40.0, 35.0);
    d.appliances = vec![
        appliance("grill", 0, 800.0, 10.0, open_front()),
        appliance("sink", 0, 1600.0, 30.0, closed_front(150.0)),
    ];
    let c = counter(d);
    assert_corners(
        &c.outline,
        &[
            (-62.0, -62.0),
            (550.0, -62.0),
            (550.0, 490.0),
            (560.0, 500.0),
            (1040.0, 500.0),
            (1050.0, 490.0),
            (1050.0, -62.0),
            (3062.0, -62.0),
            (3062.0, 1172.0),
            (-62.0, 1172.0),
        ],
    );
    let notch = SideKind::Notch(0);
    let kinds: Vec<_> = c.sides.iter().map(|s| (s.kind, s.dropped)).collect();
    let front = (SideKind::Exposed, true);
    let expected = [
        front,
        (notch, false),
        (notch, false),
        (notch, false),
        front,
        front,
        front,
        front,
    ];
    assert_eq!(kinds, expected);
    // The turndown runs 35 inside, from the notch right round to the notch.
    let [line] = &c.turndown[..] else {
        panic!("{:?}", c.turndown)
    };
    let points: Vec<_> = line.vertices.iter().map(|v| v.at).collect();
    assert!(!line.closed);
    assert_points(
        &points,
        &[
            (1050.0, -27.0),
            (3027.0, -27.0),
            (3027.0, 1137.0),
            (-27.0, 1137.0),
            (-27.0, -27.0),
            (550.0, -27.0),
        ],
    );
    // Slab: 3124 × 1234 less the notch 500 × 562 and the sink, less the corners; rim: along 612 + 2012 in front,
    // 3124 behind, 1234 − 70 at the ends.
    let sink = 500.0 * 400.0 - (4.0 - PI) * 900.0;
    let notch = 500.0 * 562.0 - (2.0 - PI / 2.0) * 100.0;
    let rim = 35.0 * (612.0 + 2012.0 + 3124.0 + 2.0 * 1164.0);
    near(
        c.slab.volume(),
        (3124.0 * 1234.0 - notch - sink) * 50.0 + rim * 40.0,
    );
    // Substrate: 3054 × 1164 within the turndown; the notch is 35 less deep there.
    near(
        c.substrate.area(),
        3054.0 * 1164.0 - (notch - 500.0 * 35.0) - sink,
    );
    let sink = &c.cutouts[1];
    let bounds = sink.outline.bounds();
    assert_points(
        &[bounds.low, bounds.high, sink.centre],
        &[(1350.0, 150.0), (1850.0, 550.0), (1600.0, 350.0)],
    );
    let flange = sink.flange.bounds();
    assert_points(
        &[flange.low, flange.high],
        &[(1335.0, 135.0), (1865.0, 565.0)],
    );
    let flange = c.cutouts[0].flange.bounds();
    assert_points(
        &[flange.low, flange.high],
        &[(535.0, -62.0), (1065.0, 515.0)],
    );
}

#[test]
fn an_l_counter_is_as_on_paper() {
    let c = counter(dropped(corner(), 40.0, 35.0));
    assert_corners(
        &c.outline,
        &[
            (-62.0, -62.0),
            (2038.0, -62.0),
            (2038.0, -1762.0),
            (3272.0, -1762.0),
            (3272.0, 1172.0),
            (-62.0, 1172.0),
        ],
    );
    // 3334 × 1234 and below it 1234 × 1700; inside the turndown 3264 × 1164 and 1164 × 1700.
    let area = 3334.0 * 1234.0 + 1234.0 * 1700.0;
    let inner = 3264.0 * 1164.0 + 1164.0 * 1700.0;
    near(c.slab.volume(), area * 50.0 + (area - inner) * 40.0);
    near(c.substrate.area(), inner);
    assert!(c.turndown[0].closed && c.turndown.len() == 1);
}

#[test]
fn walls_have_no_overhang_no_profile_and_no_turndown() {
    let mut d = dropped(straight(&[Side::Seating, Side::Left]), 40.0, 35.0);
    d.counter.profile = placed(EASED);
    d.counter.corners = placed(PlanCorner::Rounded(Length::millimetres(30.0)));
    let c = counter(d);
    // Only the corner between the working side and the right end is rounded.
    assert_corners(
        &c.outline,
        &[
            (0.0, -62.0),
            (3032.0, -62.0),
            (3062.0, -32.0),
            (3062.0, 900.0),
            (0.0, 900.0),
        ],
    );
    assert_eq!(c.slab.edges[2].profile.len(), 2);
    // 3062 × 962 less the corner; the turndown's inner line 35 inside is sharp, and it ends at the walls: in front
    // 3062 and at the end 962 − 35, less the corner again.
    let corner = (1.0 - PI / 4.0) * 900.0;
    let arris = (1.0 - PI / 4.0) * 16.0;
    let rim = 35.0 * (3062.0 + 927.0) - corner;
    let sharp = (3062.0 * 962.0 - corner) * 50.0 + rim * 40.0;
    // Two arrises of 4 run 3032 + 932 straight and round a quarter of radius 30 less their centroid's inset:
    // (1 − π/4)·16 times its distance from the axis. Centroid of the spandrel: 0.2234 r from the outside, by the
    // handbook (2/3 − … )/(1 − π/4): x = r·(5/6 − π/4)/(1 − π/4) from the outside.
    let inset = 4.0 * (5.0 / 6.0 - PI / 4.0) / (1.0 - PI / 4.0);
    let way = 3032.0 + 932.0 + PI / 2.0 * (30.0 - inset);
    near(c.slab.volume(), sharp - 2.0 * arris * way);
    near(c.substrate.area(), 3027.0 * 927.0);
}

#[test]
fn a_side_without_turndown_goes_straight_down_beside_one() {
    let mut d = dropped(straight(&[]), 40.0, 35.0);
    d.counter.turndown_sides = vec![Side::Working];
    d.counter.profile = placed(EASED);
    let c = counter(d);
    assert_eq!(c.turndown.len(), 1);
    let points: Vec<_> = c.turndown[0].vertices.iter().map(|v| v.at).collect();
    assert_points(&points, &[(-62.0, -27.0), (3062.0, -27.0)]);
    // Substrate: to the turndown in front, to the slab's edge elsewhere.
    near(c.substrate.area(), 3124.0 * (1234.0 - 35.0));
}

fn codes(design: Design) -> Vec<(&'static str, String)> {
    let findings = lay_out(design).err().unwrap_or_default();
    findings
        .into_iter()
        .map(|f| (f.code, f.place.key))
        .collect()
}

fn key<T>(value: &mut crate::design::Placed<T>, key: &str) {
    value.place.key = key.to_owned();
}

/// A straight counter with a turndown and the keys of what its tests spoil.
fn keyed() -> Design {
    let mut d = dropped(straight(&[]), 40.0, 35.0);
    key(&mut d.counter.profile, "edge");
    key(&mut d.counter.corners, "corners");
    key(&mut d.counter.overhang.working, "working");
    key(&mut d.counter.overhang.seating, "seating");
    d.counter.profile.value = EASED;
    d
}

fn found(change: impl Fn(&mut Design)) -> Vec<(&'static str, String)> {
    let mut d = keyed();
    change(&mut d);
    codes(d)
}

fn at(code: &'static str, key: &str) -> Vec<(&'static str, String)> {
    vec![(code, key.to_owned())]
}

#[test]
fn profiles_and_corners_that_do_not_fit_are_refused() {
    let long = Length::millimetres;
    assert_eq!(found(|_| ()), vec![]);
    let profile = |edge| found(|d| d.counter.profile.value = edge);
    assert_eq!(
        profile(EdgeProfile::Square { eased: long(36.0) }),
        at("plan-edge-profile", "edge")
    );
    assert_eq!(
        profile(EdgeProfile::Chamfer { size: long(90.0) }),
        at("plan-edge-profile", "edge")
    );
    assert_eq!(
        profile(EdgeProfile::Cove { radius: long(36.0) }),
        at("plan-edge-profile", "edge")
    );
    // Half of 50 + 40 is more than the turndown's 35.
    assert_eq!(
        profile(EdgeProfile::HalfRound),
        at("plan-edge-profile", "edge")
    );
    let rounded = |radius: f64, edge| {
        found(|d| {
            d.counter.corners.value = PlanCorner::Rounded(long(radius));
            d.counter.profile.value = edge;
        })
    };
    assert_eq!(
        rounded(30.0, EdgeProfile::Cove { radius: long(30.0) }),
        at("plan-corner-radius", "corners")
    );
    assert_eq!(
        rounded(31.0, EdgeProfile::Cove { radius: long(30.0) }),
        vec![]
    );
    // The finished corner stands 40 inside both sides: a radius of 100 passes it by 100 − 60·√2 = 15.1, of 51 by
    // 51 − 11·√2 = 35.4; the turndown's 35 are needed.
    assert_eq!(rounded(100.0, EASED), at("plan-corner-cover", "corners"));
    assert_eq!(rounded(51.0, EASED), vec![]);
}

#[test]
fn turndowns_that_meet_the_cladding_or_nothing_are_refused() {
    let turndown = |depth, width| {
        found(|d| {
            d.counter.turndown = Some(Turndown {
                depth: mm(depth),
                width: mm(width),
            });
        })
    };
    let over: Vec<_> = turndown(40.0, 45.0);
    assert_eq!(
        over.iter().map(|f| f.0).collect::<Vec<_>>(),
        ["plan-turndown"; 3]
    );
    assert_eq!(over[0].1, "working");
    // No deeper than the substrate it may be as thick as it likes.
    assert_eq!(turndown(12.0, 45.0), vec![]);
    // Tile stands 6 out of the finish coat and leaves 34.
    assert_eq!(found(|d| d.tile_band = Some(tile_band())).len(), 3);
    let half = found(|d| {
        d.counter.turndown_sides = vec![Side::Working];
        d.counter.turndown = Some(Turndown {
            depth: mm(10.0),
            width: mm(35.0),
        });
        d.counter.profile.value = EdgeProfile::HalfRound;
    });
    assert_eq!(half, at("plan-edge-profile", "edge"));
    let eased = found(|d| {
        d.counter.turndown_sides = vec![Side::Working];
        d.counter.corners.value = PlanCorner::Rounded(Length::millimetres(20.0));
    });
    assert_eq!(eased, at("plan-corner-shape", "corners"));
}

#[test]
fn cutouts_that_leave_no_rail_are_refused() {
    let sink = |setback| {
        found(|d| {
            d.counter.turndown = Some(Turndown {
                depth: mm(10.0),
                width: mm(200.0),
            });
            d.appliances = vec![appliance("sink", 0, 1600.0, 10.0, closed_front(setback))];
            d.appliances[0].station.place.key = "sink.at".to_owned();
        })
    };
    // The turndown's inner line stands 200 − 62 = 138 behind the frame's face; 25.4 more is wanted.
    assert_eq!(sink(160.0), at("plan-cutout-rail", "sink.at"));
    assert_eq!(sink(164.0), vec![]);
    assert_eq!(sink(130.0), at("plan-cutout-rail", "sink.at"));
}

#[test]
fn notches_that_collide_are_refused() {
    let grill = |change: &dyn Fn(&mut Design)| {
        found(|d| {
            d.appliances = vec![appliance("grill", 0, 420.0, 10.0, open_front())];
            d.appliances[0].station.place.key = "grill.at".to_owned();
            d.appliances[0].corner_radius.place.key = "grill.radius".to_owned();
            change(d);
        })
    };
    assert_eq!(grill(&|_| ()), vec![]);
    // From the counter's corner to the notch are 170 + 62 = 232: a radius of 220 and an inch do not fit.
    let wide = grill(&|d| {
        d.counter.corners.value = PlanCorner::Rounded(Length::millimetres(220.0));
        d.counter.turndown = None;
    });
    assert!(
        wide.contains(&("plan-notch", "grill.at".to_owned())),
        "{wide:?}"
    );
    assert_eq!(
        grill(&|d| d.appliances[0].corner_radius.value = Length::millimetres(250.0)),
        at("plan-notch", "grill.radius")
    );
}

#[test]
fn overhangs_that_meet_across_a_court_are_refused() {
    let court = |over: f64| {
        let mut d = design(vec![
            run("prep", 2400.0, None, &[]),
            run("cook", 2600.0, Some(Turn::Right), &[]),
            run("bar", 2400.0, Some(Turn::Right), &[]),
        ]);
        d.counter.overhang.working = mm(over);
        key(&mut d.counter.overhang.working, "working");
        codes(d)
    };
    // Between the working faces are 2600 − 1800 = 800: cladding 44 and twice 360 leave 36, too little for the forms.
    assert_eq!(court(330.0), vec![]);
    assert_eq!(court(360.0), at("plan-counter-side", "working"));
    assert_eq!(court(400.0), at("plan-counter-side", "working"));
}

proptest::proptest! {
    #![proptest_config(proptest::test_runner::Config { failure_persistence: None, cases: 96, ..Default::default() })]
    #[test]
    fn random_counters_are_refused_with_a_finding_or_are_whole(
        lengths in (1500.0..4000.0, 2000.0..3500.0),
        turn in proptest::sample::select(vec![None, Some(Turn::Left), Some(Turn::Right)]),
        walls in proptest::sample::subsequence(vec![Side::Seating, Side::Left], 0..=2),
        over in (0.0..120.0, 0.0..350.0, 0.0..120.0),
        drop in (1.0..90.0, 10.0..90.0),
        sides in proptest::sample::subsequence(Side::ALL.to_vec(), 0..=4),
        profile in 0..5usize,
        size in 0.0..60.0f64,
        corners in (0..3usize, 0.0..150.0),
        at in (100.0..3500.0, 100.0..3500.0),
        radius in 0.0..120.0,
        setback in 50.0..300.0,
    ) {
        let long = Length::millimetres;
        let mut runs = vec![run("cook", lengths.0, None, &walls)];
        if turn.is_some() {
            runs.push(run("serve", lengths.1, turn, &[]));
        }
        let mut d = design(runs);
        d.counter.overhang.working = mm(over.0);
        d.counter.overhang.seating = mm(over.1);
        d.counter.overhang.right = mm(over.2);
        d.counter.turndown = Some(Turndown { depth: mm(drop.0), width: mm(drop.1) });
        d.counter.turndown_sides = sides;
        d.counter.profile = placed([
            EdgeProfile::Square { eased: long((size / 4.0 - 5.0).max(0.0)) },
            EdgeProfile::Chamfer { size: long(size) },
            EdgeProfile::HalfRound,
            EdgeProfile::QuarterRound { radius: long(size) },
            EdgeProfile::Cove { radius: long(size) },
        ][profile]);
        let shapes = [PlanCorner::Sharp, PlanCorner::Chamfered(long(corners.1)), PlanCorner::Rounded(long(corners.1))];
        d.counter.corners = placed(shapes[corners.0]);
        d.appliances = vec![
            appliance("grill", 0, at.0, radius, open_front()),
            appliance("sink", 0, at.1, radius, closed_front(setback)),
        ];
        match lay_out(d) {
            Err(findings) => proptest::prop_assert!(findings.iter().all(|f| !f.found.is_empty() && !f.hint.is_empty())),
            Ok(plan) => assert_whole(&plan.counter),
        }
    }
}

/// The slab closes and has its volume, between that of its core and that of its outermost line; the substrate lies
/// within the outline.
fn assert_whole(c: &CounterPlan) {
    let slab = Solid::Slab(c.slab.clone());
    for tolerance in [0.5, 0.05] {
        assert_eq!(
            slab.faceted(tolerance).check_against(&slab, tolerance),
            Ok(()),
            "{:?}",
            c.slab
        );
    }
    let holes: f64 = c.slab.cutouts.iter().map(Outline::area).sum();
    let prism = (c.outline.area() - holes) * c.slab.thickness;
    let rim = (c.outline.area() - c.substrate.outer.area()) * c.turndown_depth;
    let volume = c.slab.volume();
    assert!(
        volume <= (prism + rim) * (1.0 + 1e-9),
        "{volume} over {prism} and {rim}"
    );
    assert!(volume > 0.0 && c.substrate.area() <= prism / c.slab.thickness + 1e-6);
    let square = c
        .slab
        .edges
        .iter()
        .flat_map(|e| &e.profile)
        .all(|p| p.bulge == 0.0 && (p.inset == 0.0 || p.z <= 0.0));
    assert!(
        !square || (volume / (prism + rim) - 1.0).abs() < 1e-9,
        "{volume} for {prism} and {rim}"
    );
}
