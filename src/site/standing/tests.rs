//! Tests of setting out.

use super::*;
use crate::design::{Turn, sample};
use crate::plan;
use crate::units::Notation;

#[test]
fn an_island_round_a_corner_has_its_points_lettered_round_it() {
    // Cook run 3000 × 900, bar run 2400 × 900 turned right: its working sides lie inside the corner.
    let runs = vec![
        sample::run("cook", 3000.0, None, &[]),
        sample::run("bar", 2400.0, Some(Turn::Right), &[]),
    ];
    let plan = plan::lay_out(sample::design(runs)).unwrap();
    let standing = reckon(&plan);
    let at: Vec<_> = standing
        .points
        .iter()
        .map(|p| (p.at.x.round(), p.at.y.round()))
        .collect();
    // Six corners counter-clockwise, then each run's corner that lies within a side of the other.
    assert_eq!(
        at,
        [
            (0.0, 0.0),
            (2100.0, 0.0),
            (2100.0, -1500.0),
            (3000.0, -1500.0),
            (3000.0, 900.0),
            (0.0, 900.0),
            (3000.0, 0.0),
            (2100.0, 900.0),
        ]
    );
    let letters: String = standing.points.iter().map(|p| p.letter.as_str()).collect();
    assert_eq!(letters, "ABCDEFGH");
    assert!(standing.points[1].is_inner(&plan) && !standing.points[0].is_inner(&plan));
    // Diagonals by Pythagoras: √(3000² + 900²) = 3132.1, √(2400² + 900²) = 2563.2.
    let diagonals = standing
        .lengths
        .iter()
        .filter(|l| matches!(l.of, SetLengthOf::Run(_, t) if t.is_diagonal()));
    let diagonals: Vec<f64> = diagonals
        .map(|l| (l.length * 10.0).round() / 10.0)
        .collect();
    assert_eq!(diagonals, [3132.1, 3132.1, 2563.2, 2563.2]);
    // Each side of the frame once.
    let mut pairs: Vec<[usize; 2]> = standing
        .lengths
        .iter()
        .map(|l| {
            let mut ends = l.ends;
            ends.sort_unstable();
            ends
        })
        .collect();
    pairs.sort_unstable();
    let count = pairs.len();
    pairs.dedup();
    assert_eq!(pairs.len(), count);
}

#[test]
fn the_largest_triangle_that_fits_a_corner_is_that_on_paper() {
    // 120 × 30 in: 10 times 3 and 4 inches, the 4 along the long side.
    assert_eq!(
        square_mark(3048.0, 762.0, Notation::Imperial),
        Some((10, true))
    );
    assert_eq!(
        square_mark(762.0, 3048.0, Notation::Imperial),
        Some((10, false))
    );
    // 750 × 900 mm: 22 times 4 are 880 and 3 are 660; 25 times 3 are 750 but 4 are 1000.
    assert_eq!(
        square_mark(750.0, 900.0, Notation::Metric),
        Some((22, false))
    );
    assert_eq!(square_mark(25.0, 900.0, Notation::Metric), None);
}

#[test]
fn the_marks_are_at_right_angles() {
    let plan = plan::lay_out(sample::design(vec![sample::run("cook", 3000.0, None, &[])])).unwrap();
    let standing = reckon(&plan);
    assert_eq!(standing.squares.len(), 4);
    for mark in &standing.squares {
        let (a, b, c) = (mark.first.1, mark.second.1, mark.across);
        assert!((a * a + b * b - c * c).abs() < 1e-6);
        // 900 deep: 30 times 3 centimetres.
        assert_eq!(mark.times, 30);
    }
}
