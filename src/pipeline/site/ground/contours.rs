//! Contour lines: where the ground has a round height.

use crate::geometry::{Point2, Point3};
use crate::units::Notation;

/// As many lines are drawn at most.
const MOST: f64 = 9.0;

/// From one contour to the next, millimetres: the smallest round step that needs no more lines than can be told apart.
pub(super) fn interval(notation: Notation, range: f64) -> f64 {
    let steps: [f64; 3] = match notation {
        Notation::Imperial => [25.4 / 8.0, 25.4 / 4.0, 25.4 / 2.0],
        Notation::Metric => [2.0, 5.0, 10.0],
    };
    let round = steps.into_iter().find(|step| range / step <= MOST);
    round.unwrap_or_else(|| {
        // Whole inches or centimetres, doubled as often as it takes.
        let whole = steps[2] * 2.0;
        let doublings = (range / MOST / whole).log2().ceil().clamp(0.0, 60.0);
        whole * doublings.exp2()
    })
}

/// The pieces of the contour at a height over some triangles.
pub(super) fn line(triangles: &[[Point3; 3]], height: f64) -> Vec<[Point2; 2]> {
    triangles.iter().filter_map(|t| across(t, height)).collect()
}

/// Where a triangle is at a height: from side to side. A corner at the height counts as above it.
fn across(t: &[Point3; 3], height: f64) -> Option<[Point2; 2]> {
    let sides = [(0, 1), (1, 2), (2, 0)];
    let cut = |(a, b): (usize, usize)| {
        let (p, q) = (t[a], t[b]);
        let above = [p.z >= height, q.z >= height];
        (above[0] != above[1]).then(|| {
            let share = (height - p.z) / (q.z - p.z);
            (p + (q - p) * share).xy()
        })
    };
    let mut ends = sides.into_iter().filter_map(cut);
    Some([ends.next()?, ends.next()?])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_contour_crosses_a_triangle_where_it_is_so_high() {
        let t = [[0.0, 0.0, 0.0], [10.0, 0.0, 10.0], [0.0, 10.0, 10.0]]
            .map(|[x, y, z]| Point3::new(x, y, z));
        let found = line(&[t], 4.0);
        assert_eq!(found.len(), 1);
        let [a, b] = found[0];
        assert!(
            (a - Point2::new(4.0, 0.0)).norm() < 1e-12
                && (b - Point2::new(0.0, 4.0)).norm() < 1e-12
        );
        assert!(line(&[t], 11.0).is_empty() && line(&[t], 0.0).is_empty());
        assert!((interval(Notation::Imperial, 50.0) - 6.35).abs() < 1e-9);
        assert!((interval(Notation::Metric, 1000.0) - 160.0).abs() < 1e-9);
        assert!(interval(Notation::Metric, 0.0) > 0.0);
    }
}
