//! Forms round counters of every sort: nothing shares volume, strips have the lengths worked on paper.

use super::pieces as forms;
use super::section::{Strip, section};
use crate::design::sample::{design, mm, placed, run, tile_band};
use crate::design::{
    self, Appliance, Design, EdgeProfile, Front, PlanCorner, Side, Station, Turn, Turndown,
};
use crate::geometry::{Bounds2, Bounds3, Faceted, Point3, Vector3};
use crate::parts::{Group, Part, PartKind, Piece, build};
use crate::plan::{Plan, lay_out};
use crate::units::Length;
use std::f64::consts::PI;

fn planned(design: Design) -> Plan {
    lay_out(design).unwrap_or_else(|findings| panic!("{findings:?}"))
}

fn corner() -> Design {
    design(vec![
        run("cook", 3000.0, None, &[]),
        run("serve", 2600.0, Some(Turn::Right), &[]),
    ])
}

fn court() -> Design {
    design(vec![
        run("prep", 2400.0, None, &[]),
        run("cook", 3200.0, Some(Turn::Right), &[]),
        run("bar", 2400.0, Some(Turn::Right), &[]),
    ])
}

/// The same with more overhang all round.
fn wide(mut design: Design) -> Design {
    design.counter.overhang.working = mm(120.0);
    design.counter.overhang.left = mm(120.0);
    design.counter.overhang.right = mm(120.0);
    design
}

fn appliance(name: &str, at: f64, radius: f64, front: Front) -> Appliance {
    Appliance {
        rating: crate::design::Rating::default(),
        name: name.to_owned(),
        kind: name.to_owned(),
        place: crate::diagnostics::Place::default(),
        run: 0,
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

/// Turndown on every side, 40 mm thick overhangs that take it.
fn dropped(
    mut d: Design,
    depth: f64,
    width: f64,
    edge: EdgeProfile,
    corners: PlanCorner,
) -> Design {
    d.counter.turndown = Some(Turndown {
        depth: mm(depth),
        width: mm(width),
    });
    d.counter.turndown_sides = Side::ALL.to_vec();
    d.counter.profile = placed(edge);
    d.counter.corners = placed(corners);
    d
}

fn with_appliances(mut d: Design) -> Design {
    d.appliances = vec![
        appliance(
            "grill",
            800.0,
            10.0,
            Front::Open {
                panel_height: mm(250.0),
                reach: mm(500.0),
            },
        ),
        appliance("sink", 1600.0, 0.0, Front::Closed { setback: mm(150.0) }),
    ];
    d
}

fn millimetres(mm: f64) -> Length {
    Length::millimetres(mm)
}

/// A solid in its place, its triangles with what they cover in plan.
struct Shape {
    mark: String,
    group: Group,
    bounds: Bounds3,
    triangles: Vec<([Point3; 3], Bounds2)>,
}

impl Shape {
    fn new(part: &Part, faceted: &Faceted) -> Self {
        let faceted = faceted.moved(&part.placement);
        let triangles = faceted.triangles.iter().map(|t| {
            let corners = faceted.corners(t);
            let plan = Bounds2::around(corners.map(|p| p.xy()));
            plan.map(|plan| (corners, plan))
        });
        Self {
            mark: part.mark.clone(),
            group: part.group,
            bounds: faceted
                .bounds()
                .unwrap_or_else(|| panic!("{} has no surface", part.mark)),
            triangles: triangles.flatten().collect(),
        }
    }

    /// Counts the triangles above a point.
    fn contains(&self, p: Point3) -> bool {
        let above = |corners: &[Point3; 3]| {
            let [a, b, c] = corners.map(|q| q - p);
            let sides = [
                a.xy().perp(&b.xy()),
                b.xy().perp(&c.xy()),
                c.xy().perp(&a.xy()),
            ];
            let (area, height) = (
                sides.iter().sum::<f64>(),
                sides[1] * a.z + sides[2] * b.z + sides[0] * c.z,
            );
            let over = sides.iter().all(|s| *s > 0.0) || sides.iter().all(|s| *s < 0.0);
            over && height / area > 0.0
        };
        let covers =
            |b: &Bounds2| b.low.x < p.x && p.x < b.high.x && b.low.y < p.y && p.y < b.high.y;
        let count = self
            .triangles
            .iter()
            .filter(|(t, b)| covers(b) && above(t))
            .count();
        count % 2 == 1
    }

    fn contains_ball(&self, p: Point3) -> bool {
        let around = [Vector3::x(), Vector3::y(), Vector3::z()].map(|v| v * 0.2);
        around
            .iter()
            .all(|v| self.contains(p + v) && self.contains(p - v))
    }
}

/// Points of the box, spread by the van der Corput sequences of Halton.
fn spread(bounds: &Bounds3, count: u32) -> impl Iterator<Item = Point3> + '_ {
    let radical = |mut i: u32, base: u32| {
        let (mut f, mut r) = (1.0, 0.0);
        while i > 0 {
            f /= f64::from(base);
            r += f * f64::from(i % base);
            i /= base;
        }
        r
    };
    (1..=count).map(move |i| {
        let size = bounds.high - bounds.low;
        bounds.low + size.component_mul(&Vector3::new(radical(i, 2), radical(i, 3), radical(i, 5)))
    })
}

/// No two solids share a ball of 0.2 mm, of those pairs of which one is the counter's or a form.
fn assert_clear(plan: &Plan) {
    let assembly = build(plan);
    let faceted: Vec<_> = assembly.solids.iter().map(|s| s.faceted(0.2)).collect();
    let shapes: Vec<_> = assembly
        .parts
        .iter()
        .map(|part| Shape::new(part, &faceted[part.solid.0]))
        .collect();
    let ours = |s: &Shape| matches!(s.group, Group::Counter | Group::Forms);
    for (i, a) in shapes.iter().enumerate() {
        for b in &shapes[i + 1..] {
            // Appliances come when the forms are struck.
            let struck = [Group::Forms, Group::Appliances];
            let held =
                a.group == b.group || !struck.contains(&a.group) || !struck.contains(&b.group);
            if !held || !(ours(a) || ours(b)) || !a.bounds.overlaps(&b.bounds, 0.4) {
                continue;
            }
            let common = Bounds3 {
                low: a.bounds.low.sup(&b.bounds.low),
                high: a.bounds.high.inf(&b.bounds.high),
            };
            // The one with fewer triangles first: it settles most points.
            let order = |s: &&Shape| s.triangles.len();
            let (few, many) = (
                std::cmp::min_by_key(a, b, order),
                std::cmp::max_by_key(a, b, order),
            );
            let shared = spread(&common, 250).find(|p| {
                few.contains(*p)
                    && many.contains(*p)
                    && few.contains_ball(*p)
                    && many.contains_ball(*p)
            });
            assert!(
                shared.is_none(),
                "{} and {} share {shared:?}",
                a.mark,
                b.mark
            );
        }
    }
}

fn assert_sound(plan: &Plan) {
    for piece in forms(plan)
        .iter()
        .chain(&crate::parts::counter::pieces(plan))
    {
        for tolerance in [0.5, 0.05] {
            let checked = piece
                .solid
                .faceted(tolerance)
                .check_against(&piece.solid, tolerance);
            assert_eq!(checked, Ok(()), "{} {:?}", piece.part.mark, piece.solid);
        }
    }
    let mut marks: Vec<_> = forms(plan).into_iter().map(|p| p.part.mark).collect();
    let count = marks.len();
    marks.sort_unstable();
    marks.dedup();
    assert_eq!(marks.len(), count, "a mark is used twice");
}

fn named<'a>(pieces: &'a [Piece], name: &str) -> Vec<&'a Piece> {
    pieces
        .iter()
        .filter(|p| p.part.section.starts_with(name))
        .collect()
}

#[test]
fn the_strips_of_a_straight_counter_have_the_lengths_worked_on_paper() {
    // Frame 3000 × 900, cladding 22, overhangs 40 and at the seating side 250: 3124 × 1234 outside. The walls are
    // mitred 19.05 outside that: 3162.1 and 1272.1; the floors likewise. Upstands only where 250 − 35 leaves room:
    // between the mitres at inset 35: 3124 − 70 = 3054 on the long side of its outer face.
    let eased = EdgeProfile::Square {
        eased: millimetres(4.0),
    };
    let plan = planned(dropped(
        design(vec![run("cook", 3000.0, None, &[])]),
        40.0,
        35.0,
        eased,
        PlanCorner::Sharp,
    ));
    let pieces = forms(&plan);
    let lengths = |name| -> Vec<f64> {
        named(&pieces, name)
            .iter()
            .map(|p| p.part.length.mm())
            .collect()
    };
    let near = |found: Vec<f64>, expected: &[f64]| {
        assert_eq!(found.len(), expected.len(), "{found:?}");
        assert!(
            found
                .iter()
                .zip(expected)
                .all(|(f, e)| (f - e).abs() < 1e-6),
            "{found:?} for {expected:?}"
        );
    };
    near(lengths("edge form wall"), &[3162.1, 1272.1, 3162.1, 1272.1]);
    near(
        lengths("edge form floor"),
        &[3162.1, 1272.1, 3162.1, 1272.1],
    );
    near(lengths("edge form upstand"), &[3054.0]);
    // The same lengths at both ends are one shape.
    assert_eq!(
        pieces[0].solid,
        pieces.iter().find(|p| p.part.mark == "F-05").unwrap().solid
    );
    assert_sound(&plan);
    assert_clear(&plan);
}

#[test]
fn a_wall_strip_is_the_counterpart_of_its_profile() {
    // Height 50 + 40 = 90. Half-round: 19.05 · 90 outside the outermost line, and inside it 45 · 90 less the half
    // disc. Eased by 4: two corners of (1 − π/4) · 16. Cove: a quarter disc of the form stands in the hollow, and
    // below the turndown's edge nothing.
    let sheet = 19.05 * 90.0;
    for (edge, width, extra) in [
        (
            EdgeProfile::HalfRound,
            50.0,
            45.0 * 90.0 - PI * 45.0 * 45.0 / 2.0,
        ),
        (
            EdgeProfile::Square {
                eased: millimetres(4.0),
            },
            35.0,
            2.0 * (1.0 - PI / 4.0) * 16.0,
        ),
        (
            EdgeProfile::Chamfer {
                size: millimetres(10.0),
            },
            35.0,
            50.0,
        ),
        (
            EdgeProfile::QuarterRound {
                radius: millimetres(20.0),
            },
            35.0,
            (1.0 - PI / 4.0) * 400.0,
        ),
        (
            EdgeProfile::Cove {
                radius: millimetres(30.0),
            },
            35.0,
            PI / 4.0 * 900.0,
        ),
    ] {
        let mut d = corner();
        d.counter.overhang.working = mm(60.0);
        d.counter.overhang.left = mm(60.0);
        d.counter.overhang.right = mm(60.0);
        let plan = planned(dropped(d, 40.0, width, edge, PlanCorner::Sharp));
        let area = section(&plan, 0, Strip::Wall).unwrap().area();
        assert!(
            (area - sheet - extra).abs() < 1e-6,
            "{edge:?}: {area} for {}",
            sheet + extra
        );
    }
}

/// Counters with profiles, corners and turndowns of every sort.
fn every_sort() -> Vec<Design> {
    let eased = EdgeProfile::Square {
        eased: millimetres(5.0),
    };
    let cove = EdgeProfile::Cove {
        radius: millimetres(20.0),
    };
    let round = |r| PlanCorner::Rounded(millimetres(r));
    vec![
        with_appliances(dropped(corner(), 40.0, 35.0, eased, PlanCorner::Sharp)),
        with_appliances(dropped(corner(), 40.0, 35.0, cove, round(30.0))),
        dropped(corner(), 10.0, 38.0, EdgeProfile::HalfRound, round(80.0)),
        dropped(
            corner(),
            30.0,
            30.0,
            eased,
            PlanCorner::Chamfered(millimetres(25.0)),
        ),
        dropped(
            wide(court()),
            60.0,
            30.0,
            eased,
            PlanCorner::Chamfered(millimetres(80.0)),
        ),
        dropped(wide(court()), 40.0, 40.0, eased, round(110.0)),
        dropped(
            wide(corner()),
            40.0,
            50.0,
            EdgeProfile::HalfRound,
            round(60.0),
        ),
        with_appliances(dropped(court(), 60.0, 30.0, eased, PlanCorner::Sharp)),
    ]
}

#[test]
fn forms_clear_everything_round_counters_of_every_sort() {
    for d in every_sort() {
        let plan = planned(d);
        assert_sound(&plan);
        assert_clear(&plan);
    }
}

#[test]
fn forms_clear_walls_tile_and_sides_without_turndown() {
    let eased = EdgeProfile::Square {
        eased: millimetres(5.0),
    };
    let mut walled = dropped(
        design(vec![
            run("cook", 3000.0, None, &[Side::Seating, Side::Left]),
            run("serve", 2600.0, Some(Turn::Right), &[]),
        ]),
        40.0,
        30.0,
        eased,
        PlanCorner::Sharp,
    );
    walled.tile_band = Some(tile_band());
    let mut some = with_appliances(dropped(corner(), 40.0, 35.0, eased, PlanCorner::Sharp));
    some.counter.turndown_sides = vec![Side::Working, Side::Right];
    let mut inner = dropped(
        design(vec![
            run("cook", 3000.0, None, &[]),
            run("serve", 2600.0, Some(Turn::Right), &[Side::Working]),
        ]),
        40.0,
        35.0,
        eased,
        PlanCorner::Sharp,
    );
    inner.counter.turndown_sides = vec![Side::Working];
    let mut none = corner();
    none.counter.profile = placed(EdgeProfile::HalfRound);
    none.counter.corners = placed(PlanCorner::Rounded(millimetres(60.0)));
    for d in [&walled, &some, &inner, &none] {
        let plan = planned(d.clone());
        assert_sound(&plan);
        assert_clear(&plan);
    }
}

#[test]
fn forms_of_the_examples_clear_everything() {
    for text in [
        include_str!("../../../params/garden-corner.yaml"),
        include_str!("../../../params/terrace-straight.yaml"),
        include_str!("../../../params/poolside-u.yaml"),
        include_str!("../../../params/smallest.yaml"),
    ] {
        let plan = planned(design::from_text(text).unwrap_or_else(|f| panic!("{f:?}")));
        assert_sound(&plan);
        assert_clear(&plan);
    }
}

#[test]
fn a_cutout_with_sharp_corners_gets_a_frame_and_a_round_one_a_plug() {
    let eased = EdgeProfile::Square {
        eased: millimetres(5.0),
    };
    let plan = planned(with_appliances(dropped(
        corner(),
        40.0,
        35.0,
        eased,
        PlanCorner::Sharp,
    )));
    let pieces = forms(&plan);
    let of = |stem: &str| -> Vec<&Piece> {
        pieces
            .iter()
            .filter(|p| p.part.mark.starts_with(stem))
            .collect()
    };
    // The sink's 500 × 400 is framed by four strips, 50 high: 2·(500 + 400 − 2·19.05)·19.05·50.
    let volume: f64 = of("P-sink").iter().map(|p| p.solid.volume()).sum();
    assert_eq!(of("P-sink").len(), 4);
    assert!((volume - 2.0 * (900.0 - 38.1) * 19.05 * 50.0).abs() < 1e-6);
    // The grill's notch reaches 500 behind the frame's face and 62 before it; two of its corners are rounded by 10.
    let [plug] = of("P-grill")[..] else {
        panic!("one plug")
    };
    assert!((plug.solid.volume() - (500.0 * 562.0 - (2.0 - PI / 2.0) * 100.0) * 50.0).abs() < 1e-6);
    assert_eq!(plug.part.kind, PartKind::CutoutForm);
    // Both ends of the turndown in the notch are stopped.
    assert_eq!(named(&pieces, "turndown stop").len(), 2);
}
