//! Hidden pieces give way to visible lines.

use super::merge::{OnLine, SAME_DIRECTION, Stroke, free, merge, union};

/// Visible lines by direction, then by distance from the origin.
struct Ruled(Vec<Vec<OnLine>>);

impl Ruled {
    fn new(strokes: &[Stroke]) -> Self {
        let mut lines: Vec<_> = strokes.iter().filter_map(OnLine::new).collect();
        lines.sort_by(|a, b| a.angle.total_cmp(&b.angle));
        let parallel = lines.chunk_by(|a, b| b.angle - a.angle < SAME_DIRECTION);
        let sorted = parallel.map(|lines| {
            let mut lines = lines.to_vec();
            lines.sort_by(|a, b| a.offset.total_cmp(&b.offset));
            lines
        });
        Self(sorted.collect())
    }

    /// The stretches of a line beside which a visible one runs within `near`.
    fn covered(&self, line: &OnLine, near: f64) -> Vec<(f64, f64)> {
        let first = |group: &Vec<OnLine>| group.last().is_some_and(|l| l.angle < line.angle);
        // A group spans a few directions at most: its neighbours on both sides may still be parallel to the line.
        let at = self.0.partition_point(first).saturating_sub(1);
        let groups = self.0[at..].iter().take(3);
        let parallel = groups.filter(|group| {
            let differs = |l: &OnLine| (l.angle - line.angle).abs();
            group.iter().any(|l| differs(l) < SAME_DIRECTION)
        });
        let beside = parallel.flat_map(|group| {
            let from = group.partition_point(|l| l.offset < line.offset - near);
            let within = group[from..].iter();
            within.take_while(|l| l.offset <= line.offset + near)
        });
        union(beside.map(|l| (l.from - near, l.to + near)).collect())
    }
}

/// What of hidden pieces is worth drawing beside visible lines: nothing where a visible line runs along within `near`,
/// nothing twice, and no piece shorter than `shortest`.
pub fn behind(hidden: &[Stroke], visible: &[Stroke], near: f64, shortest: f64) -> Vec<Stroke> {
    let ruled = Ruled::new(visible);
    let apart = hidden.iter().filter_map(OnLine::new).flat_map(|line| {
        let pieces = free(&ruled.covered(&line, near), (line.from, line.to));
        pieces.into_iter().map(move |piece| line.stroke(piece))
    });
    let mut left = merge(&apart.collect::<Vec<_>>(), near);
    left.retain(|stroke| (stroke.to - stroke.from).norm() >= shortest);
    left
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Point2;

    fn stroke(a: (f64, f64), b: (f64, f64)) -> Stroke {
        Stroke {
            from: Point2::new(a.0, a.1),
            to: Point2::new(b.0, b.1),
            weight: 0,
        }
    }

    #[test]
    fn no_hidden_piece_runs_along_a_visible_line() {
        // A visible line from 20 to 40, 0.4 above the hidden one from 0 to 100: within 0.5 the hidden one gives way there.
        let hidden = [stroke((0.0, 0.0), (100.0, 0.0))];
        let visible = [
            stroke((40.0, 0.4), (20.0, 0.4)),
            stroke((30.0, -9.0), (30.0, 9.0)),
        ];
        let left = behind(&hidden, &visible, 0.5, 1.0);
        let ends: Vec<_> = left.iter().map(|s| (s.from.x, s.to.x)).collect();
        assert_eq!(ends, [(0.0, 19.5), (40.5, 100.0)]);
        assert_eq!(behind(&hidden, &visible, 0.3, 1.0).len(), 1);
    }

    #[test]
    fn crumbs_and_doubles_are_dropped() {
        let hidden = [
            stroke((0.0, 0.0), (10.0, 0.0)),
            stroke((10.0, 0.0), (2.0, 0.0)),
            stroke((50.0, 0.0), (50.5, 0.0)),
        ];
        let left = behind(&hidden, &[], 0.1, 1.0);
        assert_eq!(left.len(), 1);
        assert_eq!((left[0].from.x, left[0].to.x), (0.0, 10.0));
    }

    proptest::proptest! {
        /// A point on what is left is nowhere nearer to a parallel visible line than asked; a point that was hidden and
        /// is near none is still drawn. Lines run along x, so that distance is plain subtraction.
        #[test]
        fn what_is_left_keeps_away(
            hidden in proptest::collection::vec((0_i32..40, 0_i32..10, 1_i32..40), 1..6),
            visible in proptest::collection::vec((0_i32..40, 0_i32..10, 1_i32..40), 0..6),
        ) {
            let level = |&(x, y, long): &(i32, i32, i32)| {
                let (x, y, long) = (f64::from(x), f64::from(y), f64::from(long));
                stroke((x, y), (x + long, y))
            };
            let (h, v): (Vec<_>, Vec<_>) = (hidden.iter().map(level).collect(), visible.iter().map(level).collect());
            let left = behind(&h, &v, 0.25, 0.1);
            let on = |strokes: &[Stroke], x: f64, y: f64, reach: f64| strokes.iter().any(|s| {
                (s.from.y - y).abs() < 0.1 && s.from.x.min(s.to.x) - reach < x && x < s.from.x.max(s.to.x) + reach
            });
            for y in 0..10 {
                for x in 0..160 {
                    let (x, y) = (f64::from(x) * 0.5 + 0.25, f64::from(y));
                    let drawn = on(&left, x, y, 0.0);
                    let expected = on(&h, x, y, 0.0) && !on(&v, x, y, 0.25);
                    let edge = on(&v, x, y, 0.26) != on(&v, x, y, 0.24);
                    proptest::prop_assert!(drawn == expected || edge, "{} {}: {} {}", x, y, drawn, expected);
                }
            }
        }
    }
}
