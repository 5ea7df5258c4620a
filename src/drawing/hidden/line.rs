//! A piece of an edge in a view.

use crate::geometry::{Bounds2, Point2};

/// A piece of an edge, in view coordinates.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// One end.
    pub from: Point2,
    /// The other.
    pub to: Point2,
    /// Number of what it belongs to, in the order given.
    pub of: usize,
    /// False where something nearer to the eye hides it.
    pub seen: bool,
    /// How near its ends are to the eye: z of the view.
    pub depths: [f64; 2],
}

impl Line {
    /// The piece of it inside a window; `None` where nothing is.
    pub fn inside(self, window: &Bounds2) -> Option<Self> {
        let way = self.to - self.from;
        let (mut first, mut last) = (0.0_f64, 1.0_f64);
        for axis in 0..2 {
            let (low, high) = (
                window.low[axis] - self.from[axis],
                window.high[axis] - self.from[axis],
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
        let depth = |t: f64| self.depths[0] + (self.depths[1] - self.depths[0]) * t;
        (first < last).then(|| Self {
            from: self.from + way * first,
            to: self.from + way * last,
            depths: [depth(first), depth(last)],
            ..self
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

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
            depths: [0.0, 40.0],
        };
        // From (-5, 5) to (15, 15): enters at (0, 7.5), leaves at (5, 10), a quarter and a half of the way.
        let cut = line((-5.0, 5.0), (15.0, 15.0)).inside(&window).unwrap();
        assert!((cut.from - Point2::new(0.0, 7.5)).norm() < 1e-9);
        assert!((cut.to - Point2::new(5.0, 10.0)).norm() < 1e-9);
        assert!((cut.depths[0] - 10.0).abs() < 1e-9 && (cut.depths[1] - 20.0).abs() < 1e-9);
        assert_eq!(line((-5.0, 12.0), (15.0, 12.0)).inside(&window), None);
        assert_eq!(line((-5.0, 0.0), (-1.0, 9.0)).inside(&window), None);
    }
}
