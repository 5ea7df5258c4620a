//! What of a view lies in a window.

use crate::drawing::hidden::Line;
use crate::geometry::{Bounds2, Segment};

/// The piece of a line inside a window.
pub(super) fn clipped(line: Line, window: &Bounds2) -> Option<Line> {
    let way = line.to - line.from;
    let (mut first, mut last) = (0.0_f64, 1.0_f64);
    for axis in 0..2 {
        let (low, high) = (
            window.low[axis] - line.from[axis],
            window.high[axis] - line.from[axis],
        );
        if way[axis].abs() < 1e-9 {
            if low > 0.0 || high < 0.0 {
                return None;
            }
            continue;
        }
        let (a, b) = (low / way[axis], high / way[axis]);
        first = first.max(a.min(b));
        last = last.min(a.max(b));
    }
    (first < last).then(|| Line {
        from: line.from + way * first,
        to: line.from + way * last,
        ..line
    })
}

/// True for a side that only the window makes.
pub(super) fn on_border(side: &Segment, window: &Bounds2) -> bool {
    let near = |a: f64, b: f64| (a - b).abs() < 1e-3;
    (0..2).any(|axis| {
        [window.low[axis], window.high[axis]]
            .iter()
            .any(|border| near(side.from[axis], *border) && near(side.to[axis], *border))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Point2;

    #[test]
    fn a_line_is_cut_at_the_border_and_left_out_beyond() {
        let window = Bounds2 {
            low: Point2::new(0.0, 0.0),
            high: Point2::new(10.0, 10.0),
        };
        let line = |a: (f64, f64), b: (f64, f64)| Line {
            from: Point2::new(a.0, a.1),
            to: Point2::new(b.0, b.1),
            of: 3,
            seen: true,
        };
        // From (-5, 5) to (15, 15): enters at (0, 7.5), leaves at (5, 10).
        let cut = clipped(line((-5.0, 5.0), (15.0, 15.0)), &window).unwrap();
        assert!((cut.from - Point2::new(0.0, 7.5)).norm() < 1e-9);
        assert!((cut.to - Point2::new(5.0, 10.0)).norm() < 1e-9);
        assert_eq!(clipped(line((-5.0, 12.0), (15.0, 12.0)), &window), None);
        assert_eq!(clipped(line((-5.0, 0.0), (-1.0, 9.0)), &window), None);
    }
}
