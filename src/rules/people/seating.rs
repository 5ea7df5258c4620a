//! Where people can sit: the counter's edges over the seating sides.

use crate::design::{Design, Side};
use crate::diagnostics::Place;
use crate::plan::{Corner, Plan, SideKind};
use crate::rules::{Answers, Limit, Subject};
use crate::units::Unit;

/// Knee depths of planning guidelines by the height of the counter.
pub(super) const KNEES: [Limit; 3] = [
    knee(
        "knee-depth-30",
        "knee depth at a counter 30 in high",
        762.0 * 0.6,
    ),
    knee("knee-depth-36", "knee depth at a counter 36 in high", 381.0),
    knee("knee-depth-42", "knee depth at a counter 42 in high", 304.8),
];

/// The heights that those depths belong to, millimetres: 30, 36 and 42 in.
pub(super) const SITTING: [f64; 3] = [762.0, 914.4, 1066.8];

const fn knee(name: &'static str, what: &'static str, usual: f64) -> Limit {
    Limit {
        name,
        what,
        usual,
        unit: Unit::Length,
        source: "published kitchen planning guidelines: 18, 15 and 12 in at 30, 36 and 42 in",
    }
}

/// One edge of the counter at which people can sit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Seating {
    /// The number of its face.
    pub face: usize,
    /// Its length between the corners of the counter, millimetres.
    pub length: f64,
    /// How many of its ends are inside corners.
    pub inner_ends: usize,
    /// How far the counter passes the finished face.
    pub overhang: f64,
}

/// Every edge over a seating side that is not a wall.
pub(super) fn edges(plan: &Plan) -> Vec<Seating> {
    let n = plan.faces.len();
    let sides = plan.counter.sides.iter();
    sides
        .filter(|s| s.kind == SideKind::Exposed && plan.faces[s.face].side == Side::Seating)
        .map(|s| {
            let corners = [&plan.faces[s.face], &plan.faces[(s.face + 1) % n]];
            Seating {
                face: s.face,
                length: s.length(),
                inner_ends: corners
                    .iter()
                    .filter(|f| f.corner == Corner::Reflex)
                    .count(),
                overhang: s.overhang,
            }
        })
        .collect()
}

/// How many are to sit: nothing to ask where there is no such edge, and said where the file leaves it open.
pub(super) fn seats(subject: &Subject, answers: &mut Answers) -> Option<u32> {
    let people = &subject.design().people;
    let no_edge = edges(subject.plan).is_empty();
    match &people.seats {
        None if no_edge => {
            answers.nothing("every seating side stands against a wall");
            None
        }
        None => {
            let group = group(subject.design());
            answers.missing(&group, "seats", "how many people are to sit is not known");
            None
        }
        Some(seats) if seats.value == 0 => {
            answers.nothing("nobody is to sit at it");
            None
        }
        Some(seats) => Some(seats.value),
    }
}

/// The place of the group `people`, whether or not it is written.
pub(super) fn group(design: &Design) -> Place {
    Place {
        key: "people".to_owned(),
        ..design.people.place.clone()
    }
}

/// The knee depth that a counter of this height asks for: between the heights of the guidelines in proportion.
pub(super) fn knee_depth(depths: [f64; 3], height: f64) -> f64 {
    let between = |i: usize| {
        let part = (height - SITTING[i]) / (SITTING[i + 1] - SITTING[i]);
        depths[i] + (depths[i + 1] - depths[i]) * part
    };
    match height {
        h if h <= SITTING[0] => depths[0],
        h if h <= SITTING[1] => between(0),
        h if h <= SITTING[2] => between(1),
        _ => depths[2],
    }
}

/// The widest seat of which so many find place along some edges of these lengths; zero without an edge or a seat.
pub(super) fn widest_seat(lengths: &[f64], seats: u32) -> f64 {
    let most = seats.min(500);
    let fits = |width: f64| {
        let places: f64 = lengths.iter().map(|l| (l / width + 1e-9).floor()).sum();
        places >= f64::from(most)
    };
    lengths
        .iter()
        .flat_map(|l| (1..=most).map(move |k| l / f64::from(k)))
        .filter(|w| *w > 0.0 && fits(*w))
        .fold(0.0, f64::max)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn knee_depths_are_those_of_the_guidelines() {
        // Published kitchen planning guidelines: 18 in at 30, 15 at 36, 12 at 42.
        let depths = KNEES.map(|k| k.usual);
        for (height, depth) in [
            (30.0, 18.0),
            (36.0, 15.0),
            (42.0, 12.0),
            (28.0, 18.0),
            (39.0, 13.5),
            (45.0, 12.0),
        ] {
            assert!(
                (knee_depth(depths, height * 25.4) - depth * 25.4).abs() < 1e-9,
                "{height}"
            );
        }
    }

    #[test]
    fn seats_are_counted_edge_by_edge() {
        // 10 ft and 5 ft: 5 and 2 seats of 24 in. A seventh seat fits only 20 in wide: 6 and 1 … or 120/6 and 60/3.
        assert!((widest_seat(&[120.0, 60.0], 7) - 24.0).abs() < 1e-9);
        assert!((widest_seat(&[120.0, 60.0], 8) - 20.0).abs() < 1e-9);
        assert_eq!(widest_seat(&[], 2), 0.0);
    }

    proptest! {
        #[test]
        fn more_length_never_narrows_a_seat(a in 1.0..300.0_f64, b in 1.0..300.0_f64, more in 0.0..100.0_f64, n in 1_u32..12) {
            prop_assert!(widest_seat(&[a + more, b], n) >= widest_seat(&[a, b], n) - 1e-9);
        }
    }
}
