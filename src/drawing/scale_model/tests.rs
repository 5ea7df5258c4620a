use super::moves::Moves;
use super::*;
use crate::design::sample;
use crate::drawing::check::texts_are_clear;
use crate::drawing::{Dash, Item, Sheet};
use crate::geometry::{Bounds2, Faceted, Placement, Point2, Solid, Vector3};
use crate::plan::{self, Plan};
use std::f64::consts::PI;

/// At 1:10: a frame of 280 × 80 × 80, a base in two halves of 150 × 100 × 90 open for it, a counter of 320 × 120 × 8.
struct Model {
    surfaces: [Faceted; 3],
    simplified: Vec<String>,
}

impl Model {
    fn new() -> Self {
        let cuboid = |x, y, z| Solid::cuboid(x, y, z).faceted(0.1);
        Self {
            surfaces: [
                cuboid(280.0, 80.0, 80.0),
                cuboid(150.0, 100.0, 90.0),
                cuboid(320.0, 120.0, 8.0),
            ],
            simplified: vec!["members are solid bars".to_owned()],
        }
    }

    fn prints(&self) -> Prints<'_> {
        let [frame, base, counter] = &self.surfaces;
        let print = |name, level, surface, at: [f64; 3], members| Print {
            name,
            level,
            surface,
            back: Placement::translation(at[0], at[1], at[2]),
            members,
        };
        // The counter is printed upside down: turned about x, its far edge and its top come to zero.
        let turned = Placement::new(Vector3::new(-10.0, 110.0, 98.0), Vector3::x() * PI);
        let counter = Print {
            back: turned,
            ..print("counter", Level::Counter, counter, [0.0; 3], 0)
        };
        Prints {
            scale: 10.0,
            bed: [330.0, 220.0, 250.0],
            clearance: 0.2,
            frame_inside: true,
            pieces: vec![
                print("frame", Level::Frame, frame, [10.0, 10.0, 0.0], 47),
                print("base-1", Level::Base, base, [0.0, 0.0, 0.0], 0),
                print("base-2", Level::Base, base, [150.0, 0.0, 0.0], 0),
                counter,
            ],
            plates: vec![
                vec![
                    (3, Placement::identity()),
                    (0, Placement::translation(0.0, 125.0, 0.0)),
                ],
                vec![
                    (1, Placement::identity()),
                    (2, Placement::translation(160.0, 0.0, 0.0)),
                ],
            ],
            simplified: &self.simplified,
        }
    }
}

fn island() -> Plan {
    plan::lay_out(sample::design(vec![sample::run("cook", 3000.0, None, &[])])).unwrap()
}

fn texts(sheet: &Sheet) -> Vec<&str> {
    let texts = sheet.items.iter().filter_map(|item| match item {
        Item::Text { text, .. } => Some(text.as_str()),
        _ => None,
    });
    texts.collect()
}

#[test]
fn levels_come_above_each_other_and_pieces_of_one_level_from_each_other() {
    let model = Model::new();
    let prints = model.prints();
    let moves = Moves::new(&prints);
    // The whole is 98 high: 0.3 of that, 29.4, lies between two levels, ten times as much built. The base's foot comes to
    // 80 + 29.4; the counter's, 90 in the model, to 80 + 29.4 + 90 + 29.4.
    let up = |i: usize| moves.of(i).z;
    assert_eq!(up(0), 0.0);
    assert!((up(1) - 1094.0).abs() < 1e-6 && (up(2) - 1094.0).abs() < 1e-6);
    assert!((up(3) - (2288.0 - 900.0)).abs() < 1e-6, "{}", up(3));
    // The halves' middles are 75 from the middle of the base: 0.14 of 750 to either side.
    assert!((moves.of(1).x + 105.0).abs() < 1e-6 && (moves.of(2).x - 105.0).abs() < 1e-6);
    assert_eq!(moves.of(3).x, 0.0);
}

#[test]
fn every_piece_is_named_on_the_first_sheet_and_numbered_on_its_bed() {
    let model = Model::new();
    let prints = model.prints();
    let sheets = sheets(&island(), &prints);
    assert_eq!(sheets.len(), 2);
    let first = texts(&sheets[0]);
    for name in ["1  frame", "2  base-1", "3  base-2", "4  counter"] {
        assert!(first.contains(&name), "{name}: {first:?}");
    }
    let second = texts(&sheets[1]);
    for text in ["plate-1.3mf, bed 330 × 220 mm", "base-2.stl", "47", "280.0"] {
        assert!(second.contains(&text), "{text}: {second:?}");
    }
    // Each number once in the list and once on a bed; 1 and 2 are beds' numbers too.
    for (number, times) in [("1", 4), ("2", 4), ("3", 2), ("4", 2)] {
        let count = second.iter().filter(|t| **t == number).count();
        assert_eq!(count, times, "{number}: {second:?}");
    }
    for sheet in &sheets {
        texts_are_clear(sheet).unwrap();
        assert!(sheet.lost.is_empty());
    }
}

#[test]
fn a_frame_that_stands_beside_has_no_way_into_the_base() {
    let model = Model::new();
    let mut prints = model.prints();
    let ways = |prints: &Prints| {
        let sheets = sheets(&island(), prints);
        let items = sheets[0].items.iter();
        items
            .filter(|i| {
                matches!(
                    i,
                    Item::Path {
                        dash: Dash::Phantom,
                        ..
                    }
                )
            })
            .count()
    };
    let both = ways(&prints);
    prints.frame_inside = false;
    let one = ways(&prints);
    // From three corners of each level something of the way is seen at least.
    assert!(one >= 3 && both >= one + 3, "{one}, {both}");
}

#[test]
fn a_number_stands_on_its_print_or_between_its_bars() {
    let around = Bounds2 {
        low: Point2::new(0.0, 0.0),
        high: Point2::new(24.0, 24.0),
    };
    // On an L the middle of the box is not on the print.
    let on_l = |p: Point2| p.x < 6.0 || p.y < 6.0;
    assert!(on_l(bed_view::places(&around, on_l, &[])[0]));
    // Walls too thin to be met: a corridor 6 wide along the left of a notch that is open to the right.
    let at = |x: f64, y: f64| Point2::new(x, y);
    let ring = [
        at(0.0, 0.0),
        at(24.0, 0.0),
        at(24.0, 6.0),
        at(6.0, 6.0),
        at(6.0, 18.0),
    ];
    let ring = [&ring[..], &[at(24.0, 18.0), at(24.0, 24.0), at(0.0, 24.0)]].concat();
    let walls: Vec<_> = (0..8).map(|i| [ring[i], ring[(i + 1) % 8]]).collect();
    let first = bed_view::places(&around, |_| false, &walls)[0];
    assert!(first.x < 6.0 && (first.y - 12.0).abs() < 1.0, "{first}");
}

#[test]
fn no_pieces_are_no_sheets_and_many_fill_several() {
    let model = Model::new();
    let mut prints = model.prints();
    let base = prints.pieces[1].clone();
    prints.pieces = (0..40)
        .map(|i| Print {
            back: Placement::translation(160.0 * f64::from(i % 8), 110.0 * f64::from(i / 8), 0.0),
            ..base.clone()
        })
        .collect();
    prints.plates = (0..10)
        .map(|i| (0..4).map(|k| (4 * i + k, Placement::identity())).collect())
        .collect();
    // Ten beds, six on a sheet.
    assert_eq!(sheets(&island(), &prints).len(), 3);
    prints.pieces.clear();
    assert!(sheets(&island(), &prints).is_empty());
}
