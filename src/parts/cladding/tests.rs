//! Layers held against volumes worked on paper, and against each other.

use super::joints::BEARING;
use super::pieces as cladding;
use crate::design::sample::{design, mm, placed, run, tile_band};
use crate::design::{Design, Opening, OpeningKind, Side, Station, Turn};
use crate::geometry::{Bounds3, Point3};
use crate::parts::{PartKind, Piece};
use crate::plan::{Courses, Layers, Plan, lay_out};
use crate::units::Length;

fn planned(design: Design) -> Plan {
    lay_out(design).unwrap_or_else(|findings| panic!("{findings:?}"))
}

fn corner() -> Design {
    design(vec![
        run("cook", 3000.0, None, &[]),
        run("serve", 2600.0, Some(Turn::Right), &[]),
    ])
}

fn opening(
    name: &str,
    kind: OpeningKind,
    side: Side,
    at: f64,
    size: (f64, f64),
    sill: f64,
) -> Opening {
    Opening {
        name: name.to_owned(),
        kind,
        place: crate::diagnostics::Place::default(),
        run: 0,
        side,
        station: placed(Station::FromLeft(Length::millimetres(at))),
        width: mm(size.0),
        height: mm(size.1),
        sill: mm(sill),
        flange: mm(20.0),
        body_depth: mm(0.0),
        hardware: crate::design::Hardware::default(),
    }
}

fn with_openings(mut design: Design) -> Design {
    design.openings = vec![
        opening(
            "doors",
            OpeningKind::Door,
            Side::Working,
            900.0,
            (760.0, 480.0),
            180.0,
        ),
        opening(
            "hatch",
            OpeningKind::Hatch,
            Side::Seating,
            1500.0,
            (300.0, 300.0),
            200.0,
        ),
        opening(
            "cold",
            OpeningKind::Undercounter,
            Side::Working,
            1700.0,
            (560.0, 640.0),
            50.0,
        ),
        opening(
            "box",
            OpeningKind::Receptacle,
            Side::Seating,
            2200.0,
            (60.0, 100.0),
            700.0,
        ),
    ];
    design
}

fn volume(pieces: &[Piece], kind: PartKind) -> f64 {
    let of_kind = pieces.iter().filter(|p| p.part.kind == kind);
    of_kind.map(|p| p.solid.volume()).sum()
}

/// The box of a piece in the world: its exact shape for a plate without openings.
fn world_box(piece: &Piece) -> Bounds3 {
    let local = piece.solid.bounds();
    let corners = (0..8).map(|i| {
        let pick = |bit: usize, axis: usize| {
            if i >> bit & 1 == 0 {
                local.low[axis]
            } else {
                local.high[axis]
            }
        };
        piece.placement() * Point3::new(pick(0, 0), pick(1, 1), pick(2, 2))
    });
    Bounds3::around(corners).unwrap()
}

fn assert_apart(pieces: &[Piece]) {
    let boxes: Vec<_> = pieces
        .iter()
        .filter(|p| p.part.kind != PartKind::BaseChannel)
        .map(|p| (&p.part.mark, world_box(p)))
        .collect();
    for (i, (a, box_a)) in boxes.iter().enumerate() {
        for (b, box_b) in &boxes[i + 1..] {
            assert!(!box_a.overlaps(box_b, 1e-5), "{a} and {b} share volume");
        }
    }
}

#[test]
fn coats_round_an_l_fill_their_rings_and_share_no_volume() {
    let pieces = cladding(&planned(corner()));
    assert_apart(&pieces);
    // The frame's L has 4 sides of 3000 + 2600 + 3000 + 2600 = 11 200 round it. A band between offsets a and b of a
    // right-angled outline with 4 more outward than inward corners has the area 11 200·(b − a) + 4·(b² − a²).
    let ring = |a: f64, b: f64| 11_200.0 * (b - a) + 4.0 * (b * b - a * a);
    // Heights: base gap 50, top 915 − 50 − 12 = 853; the finish coat begins 9.525 up at the channel's lip.
    let base = ring(12.0, 18.0) * 803.0;
    let finish = ring(18.0, 22.0) * (803.0 - 9.525);
    assert!((volume(&pieces, PartKind::BaseCoat) - base).abs() < 1.0);
    assert!((volume(&pieces, PartKind::FinishCoat) - finish).abs() < 1.0);
    // Boards: one course; the sheets of 1200 leave gaps of 3 at their joints.
    let joints = pieces
        .iter()
        .filter(|p| p.part.kind == PartKind::Board)
        .count()
        - 6;
    let boards = (ring(0.0, 12.0) - joints as f64 * 3.0 * 12.0) * 803.0;
    assert!((volume(&pieces, PartKind::Board) - boards).abs() < 1.0);
}

#[test]
fn beside_a_wall_layers_stop_with_the_frame() {
    let mut wall = design(vec![run("cook", 3000.0, None, &[Side::Seating])]);
    wall.tile_band = Some(tile_band());
    let pieces = cladding(&planned(wall));
    assert_apart(&pieces);
    assert!(pieces.iter().all(|p| p.part.face != Some(2)));
    // Two ends of 900 and a front of 3000; two outward corners; nothing past y = 900.
    let ring = |a: f64, b: f64| 4800.0 * (b - a) + 2.0 * (b * b - a * a);
    assert!((volume(&pieces, PartKind::BaseCoat) - ring(12.0, 18.0) * 803.0).abs() < 1.0);
    assert!(pieces.iter().all(|p| world_box(p).high.y < 900.0 + 1e-9));
}

#[test]
fn openings_are_cut_out_of_every_layer() {
    let plan = planned(with_openings(corner()));
    let whole = cladding(&planned(corner()));
    let cut = cladding(&plan);
    // 760·480 + 300·300 + 560·640 + 60·100
    let open = 364_800.0 + 90_000.0 + 358_400.0 + 6_000.0;
    let lost = volume(&whole, PartKind::BaseCoat) - volume(&cut, PartKind::BaseCoat);
    assert!((lost - open * 6.0).abs() < 1.0);
    // Of the finish coat the refrigerator takes no more than there is above the lip.
    let lost = volume(&whole, PartKind::FinishCoat) - volume(&cut, PartKind::FinishCoat);
    assert!((lost - (open - 560.0 * 9.525) * 4.0).abs() < 1.0);
    let marks: std::collections::BTreeSet<_> = cut.iter().map(|p| &p.part.mark).collect();
    assert_eq!(marks.len(), cut.len());
    // The channel stops at what stands on the ground, and nowhere else.
    let channels: Vec<_> = marks.iter().filter(|m| m.contains("-CH")).collect();
    assert_eq!(channels.len(), 7);
}

#[test]
fn mitres_of_the_channel_meet_in_one_plane() {
    let plan = planned(corner());
    let pieces = cladding(&plan);
    let channels: Vec<_> = pieces
        .iter()
        .filter(|p| p.part.kind == PartKind::BaseChannel)
        .collect();
    assert_eq!(channels.len(), 6);
    for (i, here) in channels.iter().enumerate() {
        let next = channels[(i + 1) % 6];
        let (crate::geometry::Solid::Extrusion(a), crate::geometry::Solid::Extrusion(b)) =
            (&here.solid, &next.solid)
        else {
            panic!("a channel is an extrusion");
        };
        for v in a.profile.outer.vertices() {
            let (x, y) = (v.at.x, v.at.y);
            let right = here.placement() * Point3::new(x, y, a.start.z(x, y));
            let left = next.placement() * Point3::new(x, y, b.end.z(x, y));
            assert!((right - left).norm() < 1e-9, "{right} {left}");
        }
        assert!(here.solid.faceted(0.1).check().is_ok());
    }
    // Its foot is an inch below the frame, its lip in the finish coat.
    let low = world_box(channels[0]).low;
    assert!((low.z - (50.0 - 25.4)).abs() < 1e-9 && (low.y + 18.5).abs() < 1e-9);
}

#[test]
fn the_tile_band_takes_the_place_of_the_finish_coat() {
    let mut tiled = corner();
    tiled.tile_band = Some(tile_band());
    let pieces = cladding(&planned(tiled));
    assert_apart(&pieces);
    let tiles: Vec<_> = pieces
        .iter()
        .filter(|p| p.part.kind == PartKind::Tile)
        .collect();
    assert!(tiles.iter().all(|t| t.part.length.mm() >= 50.0));
    let low = tiles
        .iter()
        .map(|t| world_box(t).low.z)
        .fold(f64::MAX, f64::min);
    let finish = pieces
        .iter()
        .filter(|p| p.part.kind == PartKind::FinishCoat);
    let high = finish.map(|p| world_box(p).high.z).fold(0.0, f64::max);
    assert!((low - 703.0).abs() < 1e-9 && (high - 700.0).abs() < 1e-9);
    // Whole tiles share one shape.
    let whole = tiles.iter().filter(|t| t.solid == tiles[1].solid).count();
    assert!(whole > 60, "{whole}");
}

/// Panics unless every vertical edge of every board is an end of the layer, the side of an opening or half a gap from
/// the middle of an upright, and no board is larger than a sheet of `along` × `up`.
fn assert_boards_on_steel(plan: &Plan, along: f64, up: f64) {
    let layer = Layers::of(&plan.design.trade).board;
    let half = plan.design.trade.board_gap.mm() / 2.0;
    for piece in cladding(plan)
        .iter()
        .filter(|p| p.part.kind == PartKind::Board)
    {
        let index = piece.part.face.unwrap();
        let face = &plan.faces[index];
        let steel = plan.steel_behind(index);
        let (first, last) = layer.ends(&plan.faces, index);
        let at = (piece.placement() * Point3::origin()).xy() - face.start;
        let left = at.dot(&face.along);
        let size = piece.solid.bounds().high;
        assert!(size.x <= along + 1e-5 && size.y <= up + 1e-5, "{size}");
        for (edge, joint) in [(left, left - half), (left + size.x, left + size.x + half)] {
            let is = |s: f64| (edge - s).abs() < 1e-5;
            let at_opening = face.openings.iter().any(|o| is(o.s0) || is(o.s1));
            let on_stud = steel.iter().any(|t| {
                t.upright
                    && (f64::midpoint(t.s0, t.s1) - joint).abs() < 1e-5
                    && t.s1 - t.s0 > 2.0 * BEARING
            });
            assert!(
                is(first) || is(last) || at_opening || on_stud,
                "{} at {edge}",
                piece.part.mark
            );
        }
    }
}

#[test]
fn every_board_edge_is_on_steel_and_no_board_is_larger_than_a_sheet() {
    assert_boards_on_steel(&planned(with_openings(corner())), 1200.0, 900.0);
}

#[test]
fn sheets_stand_where_that_saves_a_joint_and_lie_in_staggered_courses_where_not() {
    let mut standing = with_openings(corner());
    standing.trade.board_width = mm(600.0);
    assert_boards_on_steel(&planned(standing), 600.0, 1200.0);

    let mut lying = with_openings(corner());
    lying.trade.stud_spacing = mm(300.0);
    (lying.trade.board_length, lying.trade.board_width) = (mm(800.0), mm(450.0));
    let plan = planned(lying);
    assert_boards_on_steel(&plan, 800.0, 450.0);
    let seams = |row: usize| -> Vec<f64> {
        let boards = cladding(&plan);
        let boards = boards
            .iter()
            .filter(|p| p.part.kind == PartKind::Board && p.part.face == Some(4));
        let boxes: Vec<_> = boards.map(world_box).collect();
        let low = boxes.iter().map(|b| b.low.z).fold(f64::MAX, f64::min);
        let of_row = boxes.iter().filter(|b| (b.low.z - low < 1.0) == (row == 0));
        of_row.map(|b| b.low.x).collect()
    };
    let (lower, upper) = (seams(0), seams(1));
    assert!(lower.len() > 2 && upper.len() > 2);
    let first = lower.iter().copied().fold(f64::MAX, f64::min);
    let inner = |s: &&f64| **s > first + 1.0;
    for a in lower.iter().filter(inner) {
        assert!(
            upper.iter().filter(inner).all(|b| (a - b).abs() > 150.0),
            "{lower:?} {upper:?}"
        );
    }
}

proptest::proptest! {
    #![proptest_config(proptest::test_runner::Config { failure_persistence: None, ..Default::default() })]
    #[test]
    fn boards_of_random_islands_are_on_steel(
        length in 2400.0..5200.0,
        sheet in proptest::sample::select(vec![(1200.0, 900.0), (1500.0, 900.0), (2400.0, 1200.0), (900.0, 600.0)]),
        spacing in proptest::sample::select(vec![300.0, 400.0, 600.0]),
        door in (500.0..2000.0, 250.0..900.0, 200.0..600.0, 150.0..250.0),
        hatch in (400.0..2000.0, 80.0..500.0, 100.0..500.0, 130.0..300.0),
    ) {
        let mut random = design(vec![run("cook", length, None, &[]), run("serve", 2600.0, Some(Turn::Left), &[])]);
        random.trade.stud_spacing = mm(spacing);
        (random.trade.board_length, random.trade.board_width) = (mm(sheet.0), mm(sheet.1));
        random.openings = vec![
            opening("doors", OpeningKind::Door, Side::Working, door.0, (door.1, door.2), door.3),
            opening("hatch", OpeningKind::Hatch, Side::Seating, hatch.0, (hatch.1, hatch.2), hatch.3),
        ];
        if let Ok(plan) = lay_out(random) {
            let courses = Courses::of(&plan.design.trade, &plan.levels);
            let (along, up) = (courses.sheet_along, courses.sheet_up);
            proptest::prop_assert!([(along, up), (up, along)].contains(&sheet));
            assert_boards_on_steel(&plan, along, up);
        }
    }
}
