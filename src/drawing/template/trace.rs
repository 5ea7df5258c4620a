//! Lines of straight pieces and arcs, open or closed, and what of them lies in a window.

use crate::geometry::{Bounds2, Outline, Point2, Segment, Vertex};
use std::f64::consts::TAU;

/// A line of straight pieces and arcs.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Trace {
    /// Its points; the last of an open line bends nowhere.
    pub(super) points: Vec<Vertex>,
    /// True when it returns to its first point.
    pub(super) closed: bool,
}

impl Trace {
    /// A straight line between two points.
    pub(super) fn straight(from: Point2, to: Point2) -> Self {
        Self {
            points: vec![Vertex::sharp(from.x, from.y), Vertex::sharp(to.x, to.y)],
            closed: false,
        }
    }

    /// An outline all round.
    pub(super) fn round(outline: &Outline) -> Self {
        Self {
            points: outline.vertices().to_vec(),
            closed: true,
        }
    }

    /// An outline less the sides that `leave_out` picks: the stretches that are left.
    pub(super) fn without(outline: &Outline, leave_out: impl Fn(&Segment) -> bool) -> Vec<Self> {
        let sides: Vec<_> = outline.segments().map(|s| (s, leave_out(&s))).collect();
        let Some(first) = sides.iter().position(|(_, left_out)| *left_out) else {
            return vec![Self::round(outline)];
        };
        let (before, after) = sides.split_at(first);
        let turned: Vec<_> = after.iter().chain(before).copied().collect();
        turned
            .split(|(_, left_out)| *left_out)
            .filter(|stretch| !stretch.is_empty())
            .map(|stretch| Self::chain(&stretch.iter().map(|(s, _)| *s).collect::<Vec<_>>()))
            .collect()
    }

    /// Segments that follow on one another.
    fn chain(segments: &[Segment]) -> Self {
        let starts = segments.iter().map(|s| Vertex {
            at: s.from,
            bulge: s.bulge,
        });
        let end = segments.last().map(|s| Vertex::sharp(s.to.x, s.to.y));
        Self {
            points: starts.chain(end).collect(),
            closed: false,
        }
    }

    /// Its pieces in order.
    pub(super) fn segments(&self) -> impl Iterator<Item = Segment> + '_ {
        let next = self
            .points
            .iter()
            .skip(1)
            .chain(self.points.first().filter(|_| self.closed));
        self.points.iter().zip(next).map(|(from, to)| Segment {
            from: from.at,
            to: to.at,
            bulge: from.bulge,
        })
    }

    /// Its length along the line.
    #[cfg(test)]
    pub(super) fn length(&self) -> f64 {
        self.segments().map(|s| s.length()).sum()
    }

    /// The box round it.
    pub(super) fn bounds(&self) -> Option<Bounds2> {
        Bounds2::around(self.segments().flat_map(|s| s.bounds_points()))
    }

    /// The same line with every point moved.
    pub(super) fn moved(&self, motion: &nalgebra::Isometry2<f64>) -> Self {
        let points = self.points.iter();
        Self {
            points: points
                .map(|v| Vertex {
                    at: motion * v.at,
                    bulge: v.bulge,
                })
                .collect(),
            closed: self.closed,
        }
    }

    /// The parts of it inside a window, each as long as can be; a line wholly inside comes back unchanged.
    pub(super) fn inside(&self, window: &Bounds2) -> Vec<Self> {
        let Some(bounds) = self.bounds() else {
            return Vec::new();
        };
        if contains(window, bounds.low) && contains(window, bounds.high) {
            return vec![self.clone()];
        }
        if apart(&bounds, window) {
            return Vec::new();
        }
        let mut runs: Vec<Vec<Segment>> = Vec::new();
        let mut broken = true;
        for segment in self.segments() {
            for (piece, within) in segment.split(window) {
                if !within {
                    broken = true;
                } else if let Some(run) = runs.last_mut().filter(|_| !broken) {
                    run.push(piece);
                } else {
                    runs.push(vec![piece]);
                    broken = false;
                }
            }
        }
        // A closed line may be cut open in the middle of a visible part.
        if self.closed && !broken && runs.len() > 1 && starts_inside(self, window) {
            let first = runs.remove(0);
            if let Some(last) = runs.last_mut() {
                last.extend(first);
            }
        }
        runs.iter().map(|run| Self::chain(run)).collect()
    }
}

fn starts_inside(trace: &Trace, window: &Bounds2) -> bool {
    let first = trace.segments().next();
    first
        .and_then(|s| s.split(window).into_iter().next())
        .is_some_and(|(_, within)| within)
}

/// True when a point lies in a window or on its edge.
pub(super) fn contains(window: &Bounds2, p: Point2) -> bool {
    (window.low.x..=window.high.x).contains(&p.x) && (window.low.y..=window.high.y).contains(&p.y)
}

/// What a window does to one piece.
pub(super) trait Pieces {
    /// The fractions of the way at which it crosses a line square to an axis, its ends left out.
    fn crossings(&self, axis: usize, at: f64) -> Vec<f64>;
    /// Its parts between the window's edges, in order, and whether each lies within.
    fn split(&self, window: &Bounds2) -> Vec<(Segment, bool)>;
    /// The part of it between two fractions of its length.
    fn part(&self, from: f64, to: f64) -> Segment;
    /// Points whose box is the box round it.
    fn bounds_points(&self) -> Vec<Point2>;
}

/// True when two boxes share no point.
pub(super) fn apart(a: &Bounds2, b: &Bounds2) -> bool {
    (0..2).any(|axis| a.high[axis] < b.low[axis] || a.low[axis] > b.high[axis])
}

impl Pieces for Segment {
    fn crossings(&self, axis: usize, at: f64) -> Vec<f64> {
        let mut found = match self.arc() {
            None => vec![(at - self.from[axis]) / (self.to[axis] - self.from[axis])],
            Some(arc) => {
                let half = ((at - arc.centre[axis]) / arc.radius).acos();
                let zero = if axis == 0 { 0.0 } else { TAU / 4.0 };
                let angles = [zero - half, zero + half];
                angles
                    .map(|angle| fraction(arc.start, arc.sweep, angle))
                    .to_vec()
            }
        };
        found.retain(|f| *f > 0.0 && *f < 1.0);
        found
    }

    fn split(&self, window: &Bounds2) -> Vec<(Segment, bool)> {
        let near = Bounds2::around(self.bounds_points()).is_some_and(|b| !apart(&b, window));
        if !near {
            return vec![(*self, false)];
        }
        let mut cuts = vec![0.0, 1.0];
        for (axis, at) in [
            (0, window.low.x),
            (0, window.high.x),
            (1, window.low.y),
            (1, window.high.y),
        ] {
            cuts.extend(self.crossings(axis, at));
        }
        cuts.sort_by(f64::total_cmp);
        cuts.dedup_by(|a, b| (*a - *b).abs() < 1e-12);
        cuts.windows(2)
            .map(|pair| {
                let within = contains(window, self.at(f64::midpoint(pair[0], pair[1])));
                (self.part(pair[0], pair[1]), within)
            })
            .collect()
    }

    fn part(&self, from: f64, to: f64) -> Segment {
        Segment {
            from: if from <= 0.0 {
                self.from
            } else {
                self.at(from)
            },
            to: if to >= 1.0 { self.to } else { self.at(to) },
            bulge: self
                .arc()
                .map_or(0.0, |a| (a.sweep * (to - from) / 4.0).tan()),
        }
    }

    fn bounds_points(&self) -> Vec<Point2> {
        let mut points = vec![self.from, self.to];
        if let Some(arc) = self.arc() {
            for quarter in 0..4 {
                let f = fraction(arc.start, arc.sweep, f64::from(quarter) * TAU / 4.0);
                if f < 1.0 {
                    points.push(self.at(f));
                }
            }
        }
        points
    }
}

/// Where an arc passes an angle, as a fraction of the way; beyond 1 when it does not.
fn fraction(start: f64, sweep: f64, angle: f64) -> f64 {
    ((angle - start) * sweep.signum()).rem_euclid(TAU) / sweep.abs()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn window(x0: f64, y0: f64, x1: f64, y1: f64) -> Bounds2 {
        Bounds2 {
            low: Point2::new(x0, y0),
            high: Point2::new(x1, y1),
        }
    }

    #[test]
    fn a_window_cuts_lines_and_arcs_exactly() {
        let hole = Trace::round(&Outline::rounded_rectangle(0.0, 0.0, 100.0, 60.0, 10.0));
        // The window's left edge passes through the two left arcs at x = 2: there the circle about (10, 10) is at
        // y = 10 − √(10² − 8²) = 4, and about (10, 50) at y = 50 + 6 = 56.
        let parts = hole.inside(&window(-5.0, -5.0, 2.0, 70.0));
        assert_eq!(parts.len(), 1);
        let (first, last) = (
            parts[0].points.first().unwrap().at,
            parts[0].points.last().unwrap().at,
        );
        assert!((first - Point2::new(2.0, 56.0)).norm() < 1e-9, "{first}");
        assert!((last - Point2::new(2.0, 4.0)).norm() < 1e-9, "{last}");
        // Two arcs of the angle whose cosine is 8/10 and 40 of straight side.
        assert!((parts[0].length() - (40.0 + 2.0 * 10.0 * 0.8_f64.acos())).abs() < 1e-9);
    }

    #[test]
    fn the_parts_of_a_grid_of_windows_make_up_the_whole() {
        let hole = Trace::round(&Outline::rounded_rectangle(3.0, 1.0, 101.0, 63.0, 17.0));
        let total: f64 = (0..12)
            .flat_map(|i| (0..8).map(move |j| (f64::from(i) * 10.0, f64::from(j) * 10.0)))
            .flat_map(|(x, y)| hole.inside(&window(x, y, x + 10.0, y + 10.0)))
            .map(|t| t.length())
            .sum();
        assert!((total - hole.length()).abs() < 1e-6);
        assert_eq!(hole.inside(&window(0.0, 0.0, 200.0, 200.0)), [hole]);
    }

    #[test]
    fn a_part_over_the_start_of_a_closed_line_is_one_piece() {
        let square = Trace::round(&Outline::rectangle(0.0, 0.0, 10.0, 10.0));
        let parts = square.inside(&window(-1.0, -1.0, 5.0, 5.0));
        assert_eq!(parts.len(), 1);
        assert_eq!(
            parts[0].points.iter().map(|v| v.at).collect::<Vec<_>>(),
            [
                Point2::new(0.0, 5.0),
                Point2::new(0.0, 0.0),
                Point2::new(5.0, 0.0),
            ]
        );
    }

    #[test]
    fn a_side_left_out_opens_the_line() {
        let square = Outline::rectangle(0.0, 0.0, 10.0, 10.0);
        let stretches = Trace::without(&square, |s| s.from.y == 0.0 && s.to.y == 0.0);
        assert_eq!(stretches.len(), 1);
        let open = &stretches[0];
        let points: Vec<_> = open.points.iter().map(|v| (v.at.x, v.at.y)).collect();
        assert_eq!(points, [(10.0, 0.0), (10.0, 10.0), (0.0, 10.0), (0.0, 0.0)]);
        assert!(!open.closed);
    }
}
