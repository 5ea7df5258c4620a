//! The sheets of the pour, drawn on every paper.

use super::*;
use crate::design::sample;
use crate::drawing::border::Frame;
use crate::drawing::{Item, Layer, Pen, Scale, check};
use crate::geometry::{Bounds2, Point2};
use crate::units::parse_moment;

/// A strip of so many hours with a storm in it.
fn storm(long: u32) -> Strip {
    let hour = |i: u32| {
        let t = f64::from(i);
        StripHour {
            at: t,
            air: 60.0 + t,
            concrete: 65.0 + t / 2.0,
            wind: (t * 7.0) % 40.0,
            evaporation: 0.01 * t,
            band: [0.006 * t, 0.014 * t],
            worth: [Worth::Fit, Worth::Care, Worth::Not][(i % 3) as usize],
        }
    };
    Strip {
        from: parse_moment("2027-05-14T03:00").unwrap(),
        long: f64::from(long),
        hours: (0..long).filter(|i| i % 11 != 7).map(hour).collect(),
        limit: 0.2,
        warmth: [55.0, 95.0],
        units: ["°F", "lb/sq ft/h", "mph"],
        window: Some([2.0, 3.0, 5.0]),
        clock: [2.3, 2.4, 2.5, 20.0]
            .into_iter()
            .zip(1..)
            .map(|(at, number)| Marked { at, number })
            .collect(),
    }
}

#[test]
fn any_strip_is_lettered_clear() {
    let design = sample::design(vec![sample::run("cook", 3000.0, None, &[])]);
    let frame = Frame::new(&design);
    let notes = ["A note.".to_owned()];
    let room = frame.room(&notes);
    for long in [2, 5, 24, 42, 200] {
        for height in [strip::LEAST, room.height()] {
            let mut page = frame.page("Pour", &Scale::none(), &notes);
            let area = Bounds2 {
                low: Point2::new(room.low.x, room.high.y - height),
                high: room.high,
            };
            strip::draw(&mut page, &storm(long), &area);
            let sheet = page.finish("pour".into(), "Pour".into(), "1".into(), Scale::none());
            check::texts_are_clear(&sheet).unwrap();
            assert!(sheet.lost.is_empty());
        }
    }
}

#[test]
fn an_hour_lies_under_its_own_hour_and_a_fit_one_is_white() {
    // One hour of the axis is as wide as another: 05:00 lies 2 / 24 of the way from 03:00 to 03:00.
    let design = sample::design(vec![sample::run("cook", 3000.0, None, &[])]);
    let frame = Frame::new(&design);
    let mut page = frame.page("Pour", &Scale::none(), &[]);
    strip::draw(&mut page, &storm(24), &frame.room(&[]));
    let sheet = page.finish("pour".into(), "Pour".into(), "1".into(), Scale::none());
    let x = |letters: &str| {
        let mut items = sheet.items.iter();
        items.find_map(|i| match i {
            Item::Text { text, at, .. } if text == letters => Some(at.x),
            _ => None,
        })
    };
    let (six, nine, eighteen) = (x("6:00"), x("8:00"), x("18:00"));
    let (Some(six), Some(eight), Some(eighteen)) = (six, nine, eighteen) else {
        panic!("the hours are not lettered");
    };
    let hour = (eighteen - six) / 12.0;
    assert!((eight - six - 2.0 * hour).abs() < 1e-6);
    // The first batch of the storm is at 05:00: the heavy line of the clock begins an hour left of 6:00.
    let heavy = sheet.items.iter().find_map(|i| match i {
        Item::Path {
            layer: Layer::Outline,
            pen: Some(Pen::Heavy),
            points,
            ..
        } => points.first().map(|p| p.at.x),
        _ => None,
    });
    assert!((heavy.unwrap() - (six - hour)).abs() < 1e-6);
}
