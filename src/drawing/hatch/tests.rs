//! Hatches measured.

use super::lines::{Ruling, ruled, sides};
use super::scatter::{is_inside, strewn};
use super::{Material, Patch, draw, thickness};
use crate::catalog::PaperKind;
use crate::drawing::page::Page;
use crate::drawing::{Item, Layer};
use crate::geometry::{Bounds2, Outline, Point2, Region};

/// 40 × 30 with a hole 20 × 10 in its middle.
fn ring(x: f64) -> Region {
    Region {
        outer: Outline::rectangle(x, 50.0, x + 40.0, 80.0),
        holes: vec![Outline::rectangle(x + 10.0, 60.0, x + 30.0, 70.0)],
    }
}

fn page() -> Page {
    let inside = Bounds2 {
        low: Point2::new(10.0, 10.0),
        high: Point2::new(287.0, 200.0),
    };
    Page::new(PaperKind::A4.landscape(), inside)
}

fn hatched(patches: &[Patch]) -> Vec<Item> {
    let mut page = page();
    draw(&mut page, patches);
    let sheet = page.finish(
        "s".into(),
        "s".into(),
        "1".into(),
        crate::drawing::Scale::full(),
    );
    sheet.items
}

#[test]
fn lines_fill_a_region_and_keep_out_of_its_hole() {
    // As many millimetres of line as the area has square millimetres, over the distance: 1000 mm² at 0.5 mm.
    for angle in [0.0, 45.0, 90.0, 135.0, 37.0] {
        let pieces = ruled(
            &ring(50.0),
            Ruling {
                angle,
                apart: 0.5,
                shift: 0.1,
            },
        );
        let long: f64 = pieces.iter().map(|[a, b]| (b - a).norm()).sum();
        assert!((long - 1000.0 / 0.5).abs() < 40.0, "{long} at {angle}");
        let all: Vec<_> = sides(&ring(50.0)).collect();
        for [a, b] in pieces {
            assert!(is_inside(&all, nalgebra::center(&a, &b), 0.0));
        }
    }
}

#[test]
fn grains_lie_inside_with_their_surroundings_and_fall_the_same_way_each_time() {
    let region = ring(50.0);
    let all: Vec<_> = sides(&region).collect();
    let grains = strewn(&region, 2.0, 0.4);
    // One for each 2 × 2 mm, less a rim.
    assert!((150..=250).contains(&grains.len()), "{}", grains.len());
    for grain in &grains {
        let hole = &region.holes[0].bounds();
        let from_hole = (hole.low - grain.at).sup(&(grain.at - hole.high)).max();
        assert!(is_inside(&all, grain.at, 0.4) && from_hole >= 0.28);
    }
    assert_eq!(grains, strewn(&region, 2.0, 0.4));
}

#[test]
fn no_region_is_hatched_without_end() {
    let huge = Region::solid(Outline::rectangle(0.0, 0.0, 5000.0, 4000.0));
    for material in [
        Material::Concrete,
        Material::Earth,
        Material::BaseCoat,
        Material::Tile,
    ] {
        let patch = Patch {
            material,
            regions: vec![huge.clone()],
        };
        assert!(hatched(&[patch]).len() < 1200, "{material:?}");
    }
    let bad = Region::solid(Outline::rectangle(0.0, 0.0, f64::INFINITY, f64::NAN));
    hatched(&[Patch {
        material: Material::Concrete,
        regions: vec![bad],
    }]);
}

#[test]
fn a_strip_is_as_thick_as_it_is() {
    let strip = Region::solid(Outline::rectangle(0.0, 0.0, 100.0, 0.8));
    assert!((thickness(&strip) - 0.8).abs() < 1e-9);
    let square = Region::solid(Outline::rectangle(0.0, 0.0, 5.0, 5.0));
    assert!((thickness(&square) - 5.0).abs() < 1e-6);
}

#[test]
fn sheet_steel_is_black_until_it_is_thick_and_touching_pieces_keep_a_gap() {
    let sheet = |y: f64, t: f64| Patch {
        material: Material::Steel,
        regions: vec![Region::solid(Outline::rectangle(50.0, y, 90.0, y + t))],
    };
    let fills = |items: &[Item]| -> Vec<Bounds2> {
        let black = items.iter().filter_map(|item| match item {
            Item::Path {
                points,
                fill: Some(0.0),
                layer: Layer::Section,
                ..
            } => Bounds2::around(points.iter().map(|p| p.at)),
            _ => None,
        });
        black.collect()
    };
    let two = fills(&hatched(&[sheet(50.0, 0.44), sheet(50.44, 0.44)]));
    assert_eq!(two.len(), 2);
    let gap = two[1].low.y - two[0].high.y;
    assert!((gap - 0.14).abs() < 1e-9, "{gap}");
    let thick = hatched(&[sheet(50.0, 0.9)]);
    assert!(fills(&thick).is_empty() && thick.len() > 20);
}

#[test]
fn what_touches_its_like_is_hatched_the_other_way() {
    let slope = |items: &[Item]| -> Vec<bool> {
        let lines = items.iter().filter_map(|item| match item {
            Item::Path { points, .. } if points.len() == 2 => {
                let way = points[1].at - points[0].at;
                Some(way.x * way.y > 0.0)
            }
            _ => None,
        });
        lines.collect()
    };
    let board = |x: f64| Patch {
        material: Material::Board,
        regions: vec![Region::solid(Outline::rectangle(x, 50.0, x + 10.0, 80.0))],
    };
    let first = slope(&hatched(&[board(50.0)]));
    let both = slope(&hatched(&[board(50.0), board(60.0)]));
    assert!(first.iter().all(|s| *s));
    assert_eq!(both.iter().filter(|s| **s).count(), first.len());
    assert!(both.len() > first.len());
    let apart = slope(&hatched(&[board(50.0), board(90.0)]));
    assert!(apart.iter().all(|s| *s));
}
