//! Constructed frames with noise and wrong readings, and islands that follow them.

use super::*;
use crate::design::sample::{self, mm};
use crate::design::{AsBuilt, Design, MeasuredRun, Side, Taped, Turn};
use crate::geometry::Point2;
use crate::plan::{self, Corner, Plan};
use crate::units::Notation;

/// Numbers that are the same on every machine.
struct Dice(u64);

impl Dice {
    /// Between 0 and 1.
    fn even(&mut self) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1u64 << 53) as f64
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.even()
    }

    /// Normal with deviation 1, by Box and Muller.
    fn normal(&mut self) -> f64 {
        let (a, b) = (self.even().max(1e-12), self.even());
        (-2.0 * a.ln()).sqrt() * (std::f64::consts::TAU * b).cos()
    }
}

const INCH: f64 = 25.4;

fn taped(corners: &[Point2; 4]) -> [f64; 6] {
    Taped::ALL.map(|t| {
        let [a, b] = t.ends().map(|c| corners[c as usize]);
        (b - a).norm()
    })
}

fn measured(run: usize, lengths: [f64; 6]) -> MeasuredRun {
    MeasuredRun {
        run,
        lengths: lengths.map(|l| Some(mm(l))),
        ..MeasuredRun::default()
    }
}

fn with(mut design: Design, runs: Vec<MeasuredRun>) -> Design {
    design.as_built = Some(AsBuilt {
        tape: mm(INCH / 16.0),
        runs,
        ..AsBuilt::default()
    });
    design
}

/// A straight run of 120 by 30 in.
fn straight() -> Design {
    let mut run = sample::run("cook", 120.0 * INCH, None, &[]);
    run.depth = mm(30.0 * INCH);
    let mut design = sample::design(vec![run]);
    design.project.units = Notation::Imperial;
    design
}

fn corner() -> Design {
    let mut runs = vec![
        sample::run("cook", 120.0 * INCH, None, &[]),
        sample::run("bar", 84.0 * INCH, Some(Turn::Right), &[]),
    ];
    for run in &mut runs {
        run.depth = mm(30.0 * INCH);
    }
    let mut design = sample::design(runs);
    design.project.units = Notation::Imperial;
    design
}

fn frame(design: Design) -> FrameAsBuilt {
    plan::lay_out(design).unwrap().as_built.unwrap()
}

/// A frame of 120 by 30 in as it may stand: sides within a quarter inch of the plan, racked by up to a quarter inch.
fn stands(dice: &mut Dice) -> [Point2; 4] {
    let mut by = || dice.between(-0.25, 0.25) * INCH / 2.0;
    let (l, d) = (120.0 * INCH, 30.0 * INCH);
    let rack = by();
    [
        Point2::new(by(), by()),
        Point2::new(l + by(), by()),
        Point2::new(l + by() + rack, d + by()),
        Point2::new(by() + rack, d + by()),
    ]
}

/// The share of frames, read with a deviation of 1/16 in, of which one reading is off by so much, in which that reading is
/// named first; and in which it, or its rival, is.
fn share_named(error: f64, frames: usize) -> (f64, f64) {
    let mut dice = Dice(7);
    let planned = plan::lay_out(straight()).unwrap().runs;
    let (mut first, mut either) = (0, 0);
    for i in 0..frames {
        let mut lengths = taped(&stands(&mut dice)).map(|l| l + dice.normal() * INCH / 16.0);
        let wrong = i % 6;
        let sign = if dice.even() < 0.5 { -1.0 } else { 1.0 };
        lengths[wrong] += sign * error;
        let found = solve::solve(&with(straight(), vec![measured(0, lengths)]), &planned);
        let found = found.unwrap();
        let Some(suspect) = found.suspects.first() else {
            continue;
        };
        let is = suspect.taped == Taped::ALL[wrong];
        first += usize::from(is);
        let rival = suspect.rival.is_some_and(|(_, t)| t == Taped::ALL[wrong]);
        either += usize::from(is || rival);
    }
    (first as f64 / frames as f64, either as f64 / frames as f64)
}

#[test]
fn a_reading_that_is_off_by_an_inch_or_more_is_named() {
    for inches in [1.0, 2.0, 12.0] {
        let (first, _) = share_named(inches * INCH, 150);
        assert_eq!(first, 1.0, "{inches} in");
    }
}

#[test]
fn smaller_errors_are_named_less_often() {
    let shares: Vec<f64> = [0.25, 0.5, 0.75]
        .map(|i| share_named(i * INCH, 120).0)
        .to_vec();
    assert!(
        shares[0] < shares[1] && shares[1] < shares[2] && shares[2] > 0.8,
        "{shares:?}"
    );
}

#[test]
fn sound_readings_are_rarely_blamed() {
    let mut dice = Dice(11);
    let planned = plan::lay_out(straight()).unwrap().runs;
    let blamed = (0..300).filter(|_| {
        let lengths = taped(&stands(&mut dice)).map(|l| l + dice.normal() * INCH / 16.0);
        let found = solve::solve(&with(straight(), vec![measured(0, lengths)]), &planned);
        !found.unwrap().suspects.is_empty()
    });
    let blamed = blamed.count();
    assert!(blamed <= 2, "{blamed} of 300");
}

#[test]
fn a_racked_frame_is_rarely_blamed_on_the_tape() {
    let mut dice = Dice(13);
    let planned = plan::lay_out(straight()).unwrap().runs;
    let mut blamed = 0;
    for rack in [0.5, 1.0, 1.5, 2.5, 4.0] {
        for _ in 0..30 {
            let mut corners = stands(&mut dice);
            corners[2].x += rack * INCH;
            corners[3].x += rack * INCH;
            let lengths = taped(&corners).map(|l| l + dice.normal() * INCH / 16.0);
            let found = solve::solve(&with(straight(), vec![measured(0, lengths)]), &planned);
            blamed += usize::from(!found.unwrap().suspects.is_empty());
        }
    }
    assert!(blamed <= 2, "{blamed} of 150");
}

#[test]
fn a_foot_misread_on_a_diagonal_is_told_and_set_right() {
    let mut lengths = taped(&stands(&mut Dice(3)));
    let true_value = lengths[4];
    lengths[4] += 12.0 * INCH;
    let found = frame(with(straight(), vec![measured(0, lengths)]));
    let suspect = found.suspects[0];
    assert_eq!(suspect.taped, Taped::FromWorkingLeft);
    assert_eq!(suspect.slip, Some(Slip::Feet(1)));
    assert!(
        (suspect.others - true_value).abs() < INCH / 16.0,
        "{suspect:?}"
    );
}

#[test]
fn exact_readings_leave_no_residual_and_give_the_shape() {
    let mut dice = Dice(5);
    for _ in 0..50 {
        let corners = stands(&mut dice);
        let found = frame(with(straight(), vec![measured(0, taped(&corners))]));
        let run = &found.runs[0];
        assert!(
            run.lengths
                .iter()
                .all(|l| l.residual().unwrap().abs() < 1e-6)
        );
        assert!((run.lengths.iter().map(|l| l.checked).sum::<f64>() - 1.0).abs() < 1e-9);
        // The angles of a quadrilateral add up to a full turn.
        let angles: f64 = crate::design::FrameCorner::ALL
            .map(|c| run.angle(c))
            .iter()
            .sum();
        assert!((angles - std::f64::consts::TAU).abs() < 1e-9);
    }
}

#[test]
fn five_lengths_give_a_shape_and_four_do_not() {
    let corners = stands(&mut Dice(9));
    let mut five = measured(0, taped(&corners));
    five.lengths[3] = None;
    let found = frame(with(straight(), vec![five.clone()]));
    assert!(found.runs[0].solved && found.redundancy == 0);
    assert!((found.runs[0].lengths[3].adjusted - taped(&corners)[3]).abs() < 1e-6);
    five.lengths[0] = None;
    let found = frame(with(straight(), vec![five]));
    assert_eq!(found.follow, Follow::Unsolved);
    assert!(!found.runs[0].solved);
}

#[test]
fn a_run_round_the_corner_gives_more_to_check_by() {
    let design = corner();
    let planned = plan::lay_out(design.clone()).unwrap();
    let of = |run: usize| {
        let r = &planned.runs[run];
        let corners = [
            (0.0, 0.0),
            (r.length, 0.0),
            (r.length, r.depth),
            (0.0, r.depth),
        ];
        taped(&corners.map(|(u, v)| r.point(u, v)))
    };
    let both = frame(with(
        design.clone(),
        vec![measured(0, of(0)), measured(1, of(1))],
    ));
    // Twelve readings and two marks on strings for seven points: 14 - (14 - 3).
    assert_eq!(both.redundancy, 3);
    assert_eq!(both.follow, Follow::AsPlanned);
    // One of them alone is laid beside the other as planned.
    let one = frame(with(design, vec![measured(1, of(1))]));
    assert!(one.runs[1].solved && !one.runs[0].solved);
    assert_eq!(one.follow, Follow::AsPlanned);
}

/// The corner island with its free ends and its inner side racked: off by up to 3/8 in.
fn racked(design: Design) -> Plan {
    let planned = plan::lay_out(design.clone()).unwrap();
    let moved = |run: usize, by: [(f64, f64); 4]| {
        let r = &planned.runs[run];
        let corners = [
            (0.0, 0.0),
            (r.length, 0.0),
            (r.length, r.depth),
            (0.0, r.depth),
        ];
        let mut i = 0;
        taped(&corners.map(|(u, v)| {
            i += 1;
            r.point(u + by[i - 1].0 * INCH, v + by[i - 1].1 * INCH)
        }))
    };
    // The shared corner, cook right on the seating side and bar left on the seating side, stays.
    let cook = moved(0, [(0.0, 0.0), (0.0, 0.0), (0.0, 0.0), (0.375, -0.125)]);
    let bar = moved(1, [(0.0, 0.0), (0.0, 0.25), (-0.375, 0.0), (0.0, 0.0)]);
    plan::lay_out(with(design, vec![measured(0, cook), measured(1, bar)])).unwrap()
}

#[test]
fn the_counter_passes_the_measured_faces_by_the_same_as_the_planned_ones() {
    let plan = racked(corner());
    let built = plan.as_built.as_ref().unwrap();
    assert!(built.planned().is_some(), "{:?}", built.follow);
    for (i, face) in plan.faces.iter().enumerate() {
        let sides = plan.counter.sides.iter().filter(|s| s.face == i);
        let out = plan.design.trade.cladding().mm()
            + plan.design.counter.overhang.of(face.side).value.mm();
        for side in sides {
            for p in [side.start, side.end] {
                assert!(
                    ((p - face.start).dot(&face.outward) - out).abs() < 1e-6,
                    "{}",
                    face.name
                );
            }
        }
        // Each face begins where the one before it ends, on the measured corners where those are its own.
        let next = &plan.faces[(i + 1) % plan.faces.len()];
        assert!((face.point(face.length, 0.0) - next.start).norm() < 1e-9);
    }
    let left = &built.runs[0].corners;
    let first = plan
        .faces
        .iter()
        .find(|f| f.run == 0 && f.side == Side::Left)
        .unwrap();
    assert!(
        (first.start - left[3]).norm() < 1e-6,
        "the left end begins at the measured seating corner"
    );
    assert_eq!(
        plan.faces
            .iter()
            .filter(|f| f.corner == Corner::Reflex)
            .count(),
        1
    );
}

#[test]
fn slab_and_forms_of_a_racked_island_are_sound() {
    let mut design = corner();
    design.tile_band = Some(sample::tile_band());
    let plan = racked(design);
    let assembly = crate::parts::build(&plan);
    for part in &assembly.parts {
        let solid = assembly.solid(part);
        crate::geometry::proof::prove(solid);
        assert!(part.length.mm().is_finite());
    }
}

#[test]
fn a_frame_far_off_is_left_as_planned() {
    let (l, d) = (124.0 * INCH, 30.0 * INCH);
    let lengths = [l, l, d, d, l.hypot(d), l.hypot(d)];
    let plan = plan::lay_out(with(straight(), vec![measured(0, lengths)])).unwrap();
    assert!(matches!(
        plan.as_built.as_ref().unwrap().follow,
        Follow::TooFar { run: 0, .. }
    ));
    assert_eq!(plan.faces, plan::lay_out(straight()).unwrap().faces);
}

#[test]
fn absurd_readings_do_no_harm() {
    for lengths in [
        [1.0; 6],
        [1e9; 6],
        [f64::NAN; 6],
        [1.0, 9.0, 1.0, 9e4, 3.0, 1e-9],
    ] {
        let _ = frame(with(straight(), vec![measured(0, lengths)]));
        let _ = frame(with(
            corner(),
            vec![measured(0, lengths), measured(1, lengths)],
        ));
    }
}

#[test]
fn a_frame_read_as_planned_changes_nothing() {
    for design in [straight(), corner()] {
        let bare = plan::lay_out(design.clone()).unwrap();
        let runs = bare.runs.iter().enumerate().map(|(i, r)| {
            let across = r.length.hypot(r.depth);
            measured(i, [r.length, r.length, r.depth, r.depth, across, across])
        });
        let mut read = plan::lay_out(with(design, runs.collect())).unwrap();
        assert_eq!(read.as_built.as_ref().unwrap().follow, Follow::AsPlanned);
        // All parts and drawings are made from the plan alone.
        read.as_built = None;
        read.design.as_built = None;
        assert_eq!(read, bare);
    }
}

#[test]
fn a_face_an_eighth_shorter_still_holds_its_openings() {
    let mut design = straight();
    let middle = crate::units::Length::millimetres(115.0 * INCH - 300.0);
    design.openings = vec![crate::design::Opening {
        name: "doors".to_owned(),
        kind: crate::design::OpeningKind::Door,
        place: crate::diagnostics::Place::default(),
        run: 0,
        side: Side::Working,
        station: sample::placed(crate::design::Station::FromLeft(middle)),
        width: mm(600.0),
        height: mm(400.0),
        sill: mm(150.0),
        flange: mm(20.0),
        body_depth: mm(0.0),
        hardware: crate::design::Hardware::default(),
    }];
    let (l, d) = ((120.0 - 0.125) * INCH, 30.0 * INCH);
    let lengths = [l, l, d, d, l.hypot(d), l.hypot(d)];
    let plan = plan::lay_out(with(design, vec![measured(0, lengths)])).unwrap();
    assert!(plan.as_built.as_ref().unwrap().planned().is_some());
    let face = &plan.faces[0];
    assert!((face.length - l).abs() < 1e-3);
    // The opening keeps its distance from the left corner.
    assert!((face.openings[0].s1 - 115.0 * INCH).abs() < 1e-9);
}
