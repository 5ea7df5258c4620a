//! Slabs worked on paper, and slabs of every sort proved closed.

use super::{CornerShape, ProfilePoint, Slab, SlabEdge, SlabTrouble};
use crate::geometry::proof::prove;
use crate::geometry::{Outline, Point2, Solid};
use std::f64::consts::PI;

type Profile = Vec<ProfilePoint>;

fn to(inset: f64, z: f64) -> ProfilePoint {
    ProfilePoint::straight(inset, z)
}

/// A quarter of a circle to the next point, bulging outwards.
fn round(inset: f64, z: f64) -> ProfilePoint {
    ProfilePoint::bent(inset, z, (PI / 8.0).tan())
}

/// A quarter of a circle to the next point, hollow.
fn hollow(inset: f64, z: f64) -> ProfilePoint {
    ProfilePoint::bent(inset, z, -(PI / 8.0).tan())
}

/// Thickness 50 everywhere below; turndowns 40 deep and 60 thick.
fn plain() -> Profile {
    SlabEdge::plain_profile(50.0)
}

fn square_drop() -> Profile {
    vec![
        to(0.0, 50.0),
        to(0.0, -40.0),
        to(60.0, -40.0),
        to(60.0, 0.0),
    ]
}

fn eased_drop() -> Profile {
    vec![
        round(6.0, 50.0),
        to(0.0, 44.0),
        round(0.0, -34.0),
        to(6.0, -40.0),
        to(60.0, -40.0),
        to(60.0, 0.0),
    ]
}

fn eased_top() -> Profile {
    vec![round(6.0, 50.0), to(0.0, 44.0), to(0.0, 0.0)]
}

fn eased_both() -> Profile {
    vec![
        round(6.0, 50.0),
        to(0.0, 44.0),
        round(0.0, 6.0),
        to(6.0, 0.0),
    ]
}

fn half_round_drop() -> Profile {
    vec![
        round(45.0, 50.0),
        round(0.0, 5.0),
        to(45.0, -40.0),
        to(60.0, -40.0),
        to(60.0, 0.0),
    ]
}

fn half_round() -> Profile {
    vec![round(25.0, 50.0), round(0.0, 25.0), to(25.0, 0.0)]
}

fn cove_drop() -> Profile {
    vec![
        to(0.0, 50.0),
        hollow(0.0, -10.0),
        to(30.0, -40.0),
        to(60.0, -40.0),
        to(60.0, 0.0),
    ]
}

fn slab(sides: &[((f64, f64), CornerShape, Profile)], cutouts: Vec<Outline>) -> Slab {
    let edges = sides
        .iter()
        .map(|((x, y), shape, profile)| SlabEdge {
            corner: Point2::new(*x, *y),
            shape: *shape,
            profile: profile.clone(),
        })
        .collect();
    Slab {
        edges,
        thickness: 50.0,
        cutouts,
    }
}

/// 2000 × 700 with the profiles of its front, right, back and left side.
fn straight(shape: CornerShape, profiles: [Profile; 4], cutouts: Vec<Outline>) -> Slab {
    let corners = [(0.0, 0.0), (2000.0, 0.0), (2000.0, 700.0), (0.0, 700.0)];
    let sides: Vec<_> = corners
        .into_iter()
        .zip(profiles)
        .map(|(c, p)| (c, shape, p))
        .collect();
    slab(&sides, cutouts)
}

/// Legs 2400 and 1800 long outside, 700 wide, the inner corner at (1700, 700): profiles of its six sides.
fn corner(shape: CornerShape, profiles: [Profile; 6]) -> Slab {
    let corners = [
        (0.0, 0.0),
        (2400.0, 0.0),
        (2400.0, 1800.0),
        (1700.0, 1800.0),
        (1700.0, 700.0),
        (0.0, 700.0),
    ];
    let sides: Vec<_> = corners
        .into_iter()
        .zip(profiles)
        .enumerate()
        .map(|(i, (c, p))| (c, if i == 4 { CornerShape::Sharp } else { shape }, p))
        .collect();
    slab(&sides, Vec::new())
}

fn all<const N: usize>(profile: &Profile) -> [Profile; N] {
    [(); N].map(|()| profile.clone())
}

fn sink() -> Outline {
    Outline::rounded_rectangle(700.0, 150.0, 1300.0, 550.0, 30.0)
}

fn near(found: f64, expected: f64) {
    assert!(
        (found - expected).abs() < 1e-9 * expected,
        "{found} for {expected}"
    );
}

#[test]
fn a_straight_slab_with_turndown_and_cutout_is_area_times_thickness_and_its_rim() {
    // Top 2000 × 700 = 1,400,000 mm²; cutout 600 × 400 less the corners (4 − π)·30²; × 50.
    // Rim: what is left of the whole outline outside the inner line 1880 × 580; × 40.
    let body = (1_400_000.0 - (240_000.0 - (4.0 - PI) * 900.0)) * 50.0;
    let rim = (1_400_000.0 - 1880.0 * 580.0) * 40.0;
    let s = straight(CornerShape::Sharp, all(&square_drop()), vec![sink()]);
    near(s.volume(), body + rim);
    prove(&Solid::Slab(s));
}

#[test]
fn an_l_slab_has_the_rim_of_its_mitred_line() {
    // Area 2400·700 + 700·1100 = 2,450,000. The inner line runs 60 inside: 2280 × 1680 less the corner, whose sides
    // keep their length 1700 and 1100 (one convex and one reflex end): 2280·1680 − 1700·1100 = 1,960,400.
    let s = corner(CornerShape::Sharp, all(&square_drop()));
    near(
        s.volume(),
        2_450_000.0 * 50.0 + (2_450_000.0 - 1_960_400.0) * 40.0,
    );
    prove(&Solid::Slab(s));
}

#[test]
fn a_half_round_edge_has_the_volume_of_its_cylinders_and_corners() {
    // R = 25. Core 1950 × 650 × 50; half cylinders of πR²/2 along 2·(1950 + 650); at each mitre the squares of side
    // √(R² − z²): ∫ = 4R³/3. Rounded with r = R each corner is a quarter of a ball: 4πR³/3 in all.
    let core = 1950.0 * 650.0 * 50.0 + 2.0 * 2600.0 * PI * 625.0 / 2.0;
    let cube = 25f64.powi(3);
    let sharp = straight(CornerShape::Sharp, all(&half_round()), vec![]);
    near(sharp.volume(), core + 4.0 * 4.0 / 3.0 * cube);
    prove(&Solid::Slab(sharp));
    let balls = straight(CornerShape::Rounded(25.0), all(&half_round()), vec![]);
    near(balls.volume(), core + 4.0 / 3.0 * PI * cube);
    prove(&Solid::Slab(balls));
}

#[test]
fn rounded_and_chamfered_corners_lose_what_the_plan_loses() {
    // Turndown inside stays sharp: only the outside loses its corners, over 50 + 40. Rounded 40: (4 − π)·40²;
    // chamfered 40: 4·40²/2.
    let whole = straight(CornerShape::Sharp, all(&square_drop()), vec![]).volume();
    let rounded = straight(CornerShape::Rounded(40.0), all(&square_drop()), vec![]);
    near(rounded.volume(), whole - (4.0 - PI) * 1600.0 * 90.0);
    prove(&Solid::Slab(rounded));
    let chamfered = straight(
        CornerShape::Chamfered(30.0),
        all(&square_drop()),
        vec![sink()],
    );
    near(
        chamfered.volume(),
        whole - 1800.0 * 90.0 - sink().area() * 50.0,
    );
    prove(&Solid::Slab(chamfered));
    // Radius 100 is more than the width: the inner line is rounded with 40.
    let wide = straight(CornerShape::Rounded(100.0), all(&square_drop()), vec![]);
    near(
        wide.volume(),
        whole - (4.0 - PI) * (10_000.0 * 90.0 - 1600.0 * 40.0),
    );
    prove(&Solid::Slab(wide));
}

#[test]
fn a_turndown_ends_flush_at_walls_and_at_sides_without() {
    // Front only: 2000 × 60 × 40 hangs below. Front and left: 60 mm less of the left one is new.
    let body = 1_400_000.0 * 50.0;
    let front = straight(
        CornerShape::Sharp,
        [square_drop(), plain(), plain(), plain()],
        vec![],
    );
    near(front.volume(), body + 2000.0 * 60.0 * 40.0);
    prove(&Solid::Slab(front));
    let two = straight(
        CornerShape::Sharp,
        [square_drop(), plain(), plain(), square_drop()],
        vec![],
    );
    near(two.volume(), body + (2000.0 + 640.0) * 60.0 * 40.0);
    prove(&Solid::Slab(two));
    // An eased top arris takes (1 − π/4)·6² along 2000 and 700 less at the mitre between: ∫(6 − √(36 − t²))² dt
    // over 0 … 6 is 6³·(5/3 − π/2) counted twice.
    let eased = straight(
        CornerShape::Sharp,
        [eased_top(), plain(), plain(), eased_top()],
        vec![],
    );
    let lost = (1.0 - PI / 4.0) * 36.0 * 2700.0 - 216.0 * (5.0 / 3.0 - PI / 2.0);
    near(eased.volume(), body - lost);
    prove(&Solid::Slab(eased));
}

#[test]
fn a_notch_breaks_the_front_edge_and_its_turndown() {
    // 500 wide, 450 deep, its inner corners rounded with 30. The rim stops at both its sides.
    let r = CornerShape::Rounded(30.0);
    let s = CornerShape::Sharp;
    let notched = slab(
        &[
            ((0.0, 0.0), s, square_drop()),
            ((800.0, 0.0), s, plain()),
            ((800.0, 450.0), r, plain()),
            ((1300.0, 450.0), r, plain()),
            ((1300.0, 0.0), s, square_drop()),
            ((2000.0, 0.0), s, square_drop()),
            ((2000.0, 700.0), s, plain()),
            ((0.0, 700.0), s, square_drop()),
        ],
        vec![],
    );
    let notch = 500.0 * 450.0 - (2.0 - PI / 2.0) * 900.0;
    let rim = (800.0 + 700.0 + 2.0 * 640.0) * 60.0 * 40.0;
    near(notched.volume(), (1_400_000.0 - notch) * 50.0 + rim);
    prove(&Solid::Slab(notched));
}

#[test]
fn a_turndown_meets_a_wall_in_an_inner_corner() {
    // The side from (1700, 1800) stands against a wall, the one from (1700, 700) carries the turndown and ends at
    // x = 1700: 1700 × 60 × 40; likewise the other way round: 1100 × 60 × 40.
    let area = 2_450_000.0 * 50.0;
    for (a, b, length) in [
        (plain(), square_drop(), 1700.0),
        (square_drop(), plain(), 1100.0),
    ] {
        let s = corner(
            CornerShape::Sharp,
            [plain(), plain(), plain(), a, b, plain()],
        );
        near(s.volume(), area + length * 60.0 * 40.0);
        prove(&Solid::Slab(s));
    }
    for edge in [eased_drop(), eased_top(), eased_both(), cove_drop()] {
        let s = corner(
            CornerShape::Sharp,
            [plain(), plain(), plain(), plain(), edge, plain()],
        );
        prove(&Solid::Slab(s));
    }
}

#[test]
fn every_profile_closes_at_every_corner() {
    let sixty = CornerShape::Rounded(60.0);
    for shape in [
        CornerShape::Sharp,
        CornerShape::Rounded(50.0),
        sixty,
        CornerShape::Rounded(120.0),
        CornerShape::Chamfered(50.0),
    ] {
        for edge in [
            plain(),
            square_drop(),
            eased_drop(),
            eased_top(),
            eased_both(),
            half_round(),
            half_round_drop(),
            cove_drop(),
        ] {
            if shape == sixty {
                prove(&Solid::Slab(straight(shape, all(&edge), vec![sink()])));
            }
            prove(&Solid::Slab(corner(shape, all(&edge))));
        }
    }
    let s = CornerShape::Sharp;
    for edge in [
        square_drop(),
        eased_drop(),
        eased_top(),
        eased_both(),
        half_round(),
        half_round_drop(),
        cove_drop(),
    ] {
        prove(&Solid::Slab(straight(
            s,
            [edge.clone(), plain(), edge.clone(), plain()],
            vec![],
        )));
        prove(&Solid::Slab(straight(
            s,
            [edge.clone(), edge.clone(), plain(), plain()],
            vec![],
        )));
        prove(&Solid::Slab(corner(
            s,
            [edge.clone(), plain(), plain(), edge.clone(), edge, plain()],
        )));
    }
    prove(&Solid::Slab(straight(
        s,
        [eased_drop(), eased_top(), eased_drop(), plain()],
        vec![sink()],
    )));
}

#[test]
fn the_volume_agrees_with_slices_of_the_plan_line() {
    // Simpson's rule over the height, with the area that the plan line encloses at each: outside less inside.
    for shape in [
        CornerShape::Sharp,
        CornerShape::Rounded(80.0),
        CornerShape::Chamfered(70.0),
    ] {
        let s = corner(shape, all(&half_round_drop()));
        let outside = |z: f64| 45.0 - (45f64.powi(2) - (z - 5.0f64).powi(2)).max(0.0).sqrt();
        let area = |z: f64| {
            let inner = if z < 0.0 {
                s.line(&[60.0; 6]).area()
            } else {
                0.0
            };
            s.line(&[outside(z); 6]).area() - inner
        };
        // In the angle the integrand is smooth: z = 5 + 45 sin t; the step at z = 0 is a bound of its own.
        let simpson = |from: f64, to: f64| {
            let n = 2000;
            let h = (to - from) / f64::from(n);
            let f = |i: i32| {
                let t = from + h * f64::from(i);
                let below = (to < -0.1 && i == n) || 5.0 + 45.0 * t.sin() < 0.0;
                let z = 5.0 + 45.0 * t.sin();
                area(if below { z.min(-1e-12) } else { z.max(0.0) }) * 45.0 * t.cos()
            };
            let weight = |i: i32| {
                if i == 0 || i == n {
                    1.0
                } else {
                    2.0 + 2.0 * f64::from(i % 2)
                }
            };
            (0..=n).map(|i| weight(i) * f(i)).sum::<f64>() * h / 3.0
        };
        let level = (-1f64 / 9.0).asin();
        let slices = simpson(-PI / 2.0, level) + simpson(level, PI / 2.0);
        assert!(
            (slices / s.volume() - 1.0).abs() < 1e-9,
            "{slices} for {}",
            s.volume()
        );
    }
}

#[test]
fn what_cannot_be_made_is_refused_where_it_is() {
    let fault = |s: Slab| s.checked().map(|_| ()).map_err(|f| (f.at, f.trouble));
    let s = CornerShape::Sharp;
    assert_eq!(fault(straight(s, all(&eased_drop()), vec![])), Ok(()));
    // A half-round that drops and one that does not.
    let mixed = [
        half_round_drop(),
        half_round_drop(),
        half_round(),
        half_round(),
    ];
    assert_eq!(
        fault(straight(s, mixed, vec![])),
        Err((0, SlabTrouble::Mismatch))
    );
    let eased = [eased_drop(), eased_drop(), eased_top(), eased_top()];
    let rounded = straight(CornerShape::Rounded(60.0), eased, vec![]);
    assert_eq!(fault(rounded), Err((0, SlabTrouble::EasedMismatch)));
    let tight = straight(CornerShape::Rounded(20.0), all(&half_round()), vec![]);
    assert_eq!(fault(tight), Err((0, SlabTrouble::Tight)));
    let tight = straight(CornerShape::Chamfered(10.0), all(&half_round()), vec![]);
    assert_eq!(fault(tight), Err((0, SlabTrouble::Tight)));
    let mut narrow = straight(s, all(&square_drop()), vec![]);
    narrow.edges[2].corner.y = 110.0;
    narrow.edges[3].corner.y = 110.0;
    assert_eq!(fault(narrow), Err((1, SlabTrouble::Short)));
    let mut bent = straight(s, all(&plain()), vec![]);
    bent.edges[1].corner = Point2::new(0.0, 350.0);
    bent.edges[2].corner = Point2::new(0.0, 800.0);
    assert_eq!(fault(bent).map_err(|f| f.1), Err(SlabTrouble::Straight));
    let mut odd = straight(s, all(&plain()), vec![]);
    odd.edges[1].profile = vec![to(5.0, 50.0), to(5.0, 0.0)];
    assert_eq!(fault(odd), Err((1, SlabTrouble::Profile)));
    // A half-round cannot hang past a wall in an inner corner.
    let inner = corner(
        s,
        [
            plain(),
            plain(),
            plain(),
            plain(),
            half_round_drop(),
            plain(),
        ],
    );
    assert_eq!(fault(inner), Err((4, SlabTrouble::Mismatch)));
    assert_eq!(fault(slab(&[], vec![])), Err((0, SlabTrouble::Empty)));
}
