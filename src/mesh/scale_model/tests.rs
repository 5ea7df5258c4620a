//! The scale model of small islands, against figures worked on paper.

use super::fit::Room;
use super::rough::{Rough, Sizes};
use super::{Layer, ScaleModel, scale, scale_model, split, thickness};
use crate::design;
use crate::diagnostics::{Finding, Verdict};
use crate::geometry::{Bounds3, Vector3};
use crate::mesh::body::Body;
use crate::parts::{self, Group};
use crate::plan;

/// A bench 2400 × 800 with 21 mm of board and coats on it.
fn bench(more: &str) -> (Option<ScaleModel>, Vec<Finding>, usize) {
    let text = format!(
        "project: {{title: Trial, units: metric}}
levels: {{counter: 900 mm, base_gap: 50 mm}}
trade: {{board: {{thickness: 12 mm}}, base_coat: 6 mm, finish_coat: 3 mm}}
counter: {{thickness: 50 mm}}
runs: [{{name: cook, length: 2400 mm, depth: 800 mm}}]
{more}
"
    );
    let plan = design::from_text(&text).and_then(plan::lay_out).unwrap();
    let assembly = parts::build(&plan);
    let framing = assembly.parts.iter().filter(|p| p.group == Group::Framing);
    let count = framing.count();
    let (model, findings) = scale_model(&plan, &assembly);
    (model, findings, count)
}

fn sizes() -> Sizes {
    Sizes {
        scale: 1.0,
        wall: 0.8125,
        clearance: 0.1875,
    }
}

fn cuboid(high: [f64; 3]) -> Body {
    let bounds = Bounds3 {
        low: [0.0; 3].into(),
        high: high.into(),
    };
    Body::cuboid(&bounds).unwrap()
}

#[test]
fn the_base_is_a_skin_a_clearance_in_front_of_the_frame() {
    // At 1:20 the skin is from 0.2 to 1.05 mm in front of a frame of 120 × 40, from 2.5 to 42.5 mm above the ground:
    // (122.1 · 42.1 − 120.4 · 40.4) · 40 = 11,050 mm³.
    let (model, findings, _) = bench("scale_model: {scale: 1:20}");
    assert!(findings.is_empty(), "{findings:#?}");
    let model = model.unwrap();
    assert!(model.frame_inside);
    let base = model
        .pieces
        .iter()
        .find(|p| p.layer == Layer::Base)
        .unwrap();
    let volume = base.surface.volume();
    assert!((volume / 11_050.0 - 1.0).abs() < 2e-3, "{volume}");
    assert!((base.thinnest - 0.85).abs() < 2e-3, "{}", base.thinnest);
}

#[test]
fn a_skin_too_thin_to_print_is_thickened_inwards_and_the_frame_stands_outside() {
    let (model, findings, _) = bench("scale_model: {scale: 1:32}");
    assert!(findings.is_empty(), "{findings:#?}");
    let model = model.unwrap();
    assert!(!model.frame_inside);
    let base = model
        .pieces
        .iter()
        .find(|p| p.layer == Layer::Base)
        .unwrap();
    assert!(
        base.thinnest >= 0.8 && base.thinnest < 0.802,
        "{}",
        base.thinnest
    );
}

#[test]
fn the_largest_usual_scale_that_fits_is_taken() {
    // 2442 mm and its overhangs: more than 220 mm at 1:10, less at 1:12.
    assert_eq!(bench("").0.unwrap().scale, 12.0);
    let room = |x, y| Room { x, y, z: 250.0 };
    let island = |x: f64, y: f64| Bounds3 {
        low: [0.0; 3].into(),
        high: [x, y, 900.0].into(),
    };
    assert_eq!(
        scale::largest(&[island(2200.0, 900.0)], &room(220.0, 220.0)),
        10.0
    );
    assert_eq!(
        scale::largest(&[island(900.0, 2201.0)], &room(220.0, 220.0)),
        12.0
    );
    // Turned by a quarter it fits.
    assert_eq!(
        scale::largest(&[island(900.0, 2200.0)], &room(220.0, 100.0)),
        10.0
    );
    assert_eq!(
        scale::largest(&[island(1e6, 2200.0)], &room(220.0, 100.0)),
        100.0
    );
}

#[test]
fn every_member_is_in_a_print_and_every_print_fits() {
    for bed in [220.0, 130.0, 75.0] {
        let (model, findings, count) = bench(&format!(
            "scale_model: {{scale: 1:16, printer: {{bed: {{x: {bed} mm, y: {bed} mm}}}}}}"
        ));
        let model = model.unwrap_or_else(|| panic!("{bed}: {findings:#?}"));
        assert_eq!(model.bars.len(), count);
        let frames = model.pieces.iter().filter(|p| p.layer == Layer::Frame);
        let mut marks: Vec<_> = frames.flat_map(|p| &p.members).collect();
        marks.sort();
        marks.dedup();
        assert_eq!(marks.len(), count, "{bed}");
        for piece in &model.pieces {
            piece.surface.check().unwrap();
            let bounds = piece.surface.bounds().unwrap();
            assert!(bounds.low.coords.norm() < 1e-9, "{}", piece.name);
            assert!(
                bounds.high.x <= bed && bounds.high.y <= bed,
                "{}",
                piece.name
            );
        }
        let placed: usize = model.plates.iter().map(|p| p.pieces.len()).sum();
        assert_eq!(placed, model.pieces.len());
    }
}

#[test]
fn a_strip_is_cut_with_a_tongue_and_its_socket() {
    // A strip 120 × 24 × 5 on a bed of 70: a tongue of 3 × 8, its socket 0.1875 larger on three sides.
    // The gap: (3.1875 · 8.375 − 3 · 8) · 5 = 13.477 mm³.
    let rough = Rough {
        layer: Layer::Counter,
        body: cuboid([120.0, 24.0, 5.0]),
        bars: Vec::new(),
    };
    let room = Room {
        x: 70.0,
        y: 70.0,
        z: 70.0,
    };
    let pieces = split::split(&rough, &room, &sizes()).unwrap();
    assert_eq!(pieces.len(), 2);
    let volume: f64 = pieces.iter().map(Body::volume).sum();
    assert!(
        (120.0 * 24.0 * 5.0 - volume - 13.477).abs() < 0.01,
        "{volume}"
    );
    assert_eq!(pieces[0].bounds().unwrap().high.x, 63.0);
}

#[test]
fn a_thin_wall_is_cut_with_flanks_that_print_upright() {
    // A wall 120 × 1 × 45 on a bed of 70: the tongue is 15 high at its root and 9 at its tip, 3 mm on.
    // The socket: 15 + 2 · 0.1875 · √2 at its root, 6.375 less at its tip, 3.1875 on.
    // Gap: (15.530 + 9.155) / 2 · 3.1875 − 12 · 3 = 3.342 mm² by 1 mm.
    let rough = Rough {
        layer: Layer::Base,
        body: cuboid([120.0, 1.0, 45.0]),
        bars: Vec::new(),
    };
    let room = Room {
        x: 70.0,
        y: 70.0,
        z: 70.0,
    };
    let pieces = split::split(&rough, &room, &sizes()).unwrap();
    assert_eq!(pieces.len(), 2);
    let volume: f64 = pieces.iter().map(Body::volume).sum();
    assert!((120.0 * 45.0 - volume - 3.342).abs() < 0.01, "{volume}");
}

#[test]
fn a_bed_that_nothing_can_be_split_for_is_named_where_it_stands() {
    let asked = "scale_model: {scale: 1:4, printer: {bed: {x: 20 mm, y: 20 mm}}}";
    let (model, findings, _) = bench(asked);
    assert!(model.is_none());
    assert_eq!(findings[0].code, "scale-bed");
    assert_eq!(findings[0].verdict, Verdict::Fail);
    assert_eq!((findings[0].place.line, findings[0].place.column), (6, 46));
    let low = "scale_model: {scale: 1:12, printer: {bed: {x: 300 mm, z: 40 mm}}}";
    let (model, findings, _) = bench(low);
    assert!(model.is_none());
    assert_eq!((findings[0].place.line, findings[0].place.column), (6, 58));
}

#[test]
fn a_box_is_as_thin_as_its_shortest_side() {
    assert_eq!(
        thickness::thinnest(&cuboid([10.0, 0.5, 4.0]).surface()),
        0.5
    );
    let pierced = cuboid([10.0, 10.0, 4.0]);
    let hole = Bounds3 {
        low: [1.0, 0.75, -1.0].into(),
        high: [9.0, 9.0, 5.0].into(),
    };
    let pierced = pierced.without(&Body::cuboid(&hole).unwrap());
    assert_eq!(thickness::thinnest(&pierced.surface()), 0.75);
    assert!(room_holds_a_turned_box());
}

fn room_holds_a_turned_box() -> bool {
    let room = Room {
        x: 10.0,
        y: 20.0,
        z: 5.0,
    };
    room.is_turned(&Vector3::new(15.0, 10.0, 5.0)) && !room.holds(&Vector3::new(15.0, 10.0, 5.1))
}
