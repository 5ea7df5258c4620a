//! Straight pieces between two points: whether two cross, and how far a point is from one.

use super::Point2;

/// True when two straight pieces cross inside both; pieces that only touch do not.
pub fn cross(a: [Point2; 2], b: [Point2; 2]) -> bool {
    let side = |p: Point2, q: [Point2; 2]| (q[1] - q[0]).perp(&(p - q[0]));
    let parted = |p: [Point2; 2], q: [Point2; 2]| side(p[0], q) * side(p[1], q) < 0.0;
    parted(a, b) && parted(b, a)
}

/// The sides of a closed polygon, each from a corner to the next.
pub fn sides(corners: &[Point2]) -> impl Iterator<Item = [Point2; 2]> + '_ {
    let next = corners.iter().cycle().skip(1);
    corners.iter().zip(next).map(|(a, b)| [*a, *b])
}

/// From a point to the nearest point of a straight piece, millimetres.
pub fn distance(point: Point2, piece: [Point2; 2]) -> f64 {
    let along = piece[1] - piece[0];
    let square = along.norm_squared();
    let share = if square > 0.0 {
        ((point - piece[0]).dot(&along) / square).clamp(0.0, 1.0)
    } else {
        0.0
    };
    (piece[0] + along * share - point).norm()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn piece(x0: f64, y0: f64, x1: f64, y1: f64) -> [Point2; 2] {
        [Point2::new(x0, y0), Point2::new(x1, y1)]
    }

    #[test]
    fn pieces_cross_inside_both_or_not_at_all() {
        let level = piece(0.0, 0.0, 10.0, 0.0);
        assert!(cross(level, piece(5.0, -1.0, 6.0, 1.0)));
        assert!(!cross(level, piece(5.0, 0.0, 6.0, 1.0)), "it touches");
        assert!(!cross(level, piece(11.0, -1.0, 12.0, 1.0)), "past its end");
    }

    #[test]
    fn a_point_past_the_end_is_as_far_as_the_end() {
        let level = piece(0.0, 0.0, 10.0, 0.0);
        assert_eq!(distance(Point2::new(4.0, 3.0), level), 3.0);
        assert_eq!(distance(Point2::new(13.0, 4.0), level), 5.0);
        assert_eq!(
            distance(Point2::new(3.0, 4.0), piece(0.0, 0.0, 0.0, 0.0)),
            5.0
        );
    }
}
