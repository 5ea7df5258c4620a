//! How much of a shape lies in a rectangle, exact with arcs.

use super::{Bounds2, Moments, Outline, Point2, Region, Segment, Vertex};

/// A half plane along the axes: where `sign · (p[axis] − limit)` is not negative.
#[derive(Clone, Copy)]
struct HalfPlane {
    axis: usize,
    sign: f64,
    limit: f64,
}

impl HalfPlane {
    fn depth(&self, p: Point2) -> f64 {
        self.sign * (p[self.axis] - self.limit)
    }

    /// Where a segment crosses the border, as fractions of its way, rising, its ends among them.
    fn cuts(&self, segment: Segment) -> Vec<f64> {
        let mut cuts = vec![0.0];
        if let Some(arc) = segment.arc() {
            let share = (self.limit - arc.centre[self.axis]) / arc.radius;
            if share.abs() < 1.0 {
                let angles = match self.axis {
                    0 => [share.acos(), -share.acos()],
                    _ => [share.asin(), std::f64::consts::PI - share.asin()],
                };
                let turns = angles
                    .into_iter()
                    .flat_map(|a| (-2..=2).map(move |k| a + f64::from(k) * std::f64::consts::TAU));
                cuts.extend(turns.map(|a| (a - arc.start) / arc.sweep));
            }
        } else {
            let (a, b) = (self.depth(segment.from), self.depth(segment.to));
            if (a < 0.0) != (b < 0.0) {
                cuts.push(a / (a - b));
            }
        }
        cuts.retain(|f| (0.0..1.0).contains(f));
        cuts.push(1.0);
        cuts.sort_by(f64::total_cmp);
        cuts
    }

    /// The parts of a closed curve inside, joined along the border.
    fn keep(&self, curve: &[Segment]) -> Vec<Segment> {
        let parts = curve.iter().flat_map(|s| {
            let cuts = self.cuts(*s);
            let pairs: Vec<_> = cuts.windows(2).map(|w| (w[0], w[1])).collect();
            pairs.into_iter().map(|(a, b)| part(*s, a, b))
        });
        let kept: Vec<Segment> = parts.filter(|s| self.depth(s.at(0.5)) >= 0.0).collect();
        let mut closed = Vec::with_capacity(kept.len() + 2);
        for (i, segment) in kept.iter().enumerate() {
            closed.push(*segment);
            closed.push(Segment {
                from: segment.to,
                to: kept[(i + 1) % kept.len()].from,
                bulge: 0.0,
            });
        }
        closed.retain(|s| s.from != s.to);
        closed
    }
}

/// A segment from one fraction of its way to another.
fn part(segment: Segment, from: f64, to: f64) -> Segment {
    Segment {
        from: if from == 0.0 {
            segment.from
        } else {
            segment.at(from)
        },
        to: if to == 1.0 {
            segment.to
        } else {
            segment.at(to)
        },
        bulge: segment
            .arc()
            .map_or(0.0, |a| (a.sweep * (to - from) / 4.0).tan()),
    }
}

impl Outline {
    /// What of the area lies in a rectangle; where that falls apart, its parts hang together by lines along the border.
    pub fn within(&self, bounds: &Bounds2) -> Self {
        let sides = [
            (0, 1.0, bounds.low.x),
            (0, -1.0, bounds.high.x),
            (1, 1.0, bounds.low.y),
            (1, -1.0, bounds.high.y),
        ];
        let mut curve: Vec<Segment> = self.segments().collect();
        for (axis, sign, limit) in sides {
            curve = HalfPlane { axis, sign, limit }.keep(&curve);
        }
        let vertices = curve.iter().map(|s| Vertex {
            at: s.from,
            bulge: s.bulge,
        });
        Self::new(vertices.collect())
    }

    /// The exact area of what lies in a rectangle, mm².
    ///
    /// ```
    /// use islandwright::geometry::{Bounds2, Outline, Point2};
    /// let box_of = Bounds2 { low: Point2::new(5.0, -1.0), high: Point2::new(20.0, 2.0) };
    /// assert_eq!(Outline::rectangle(0.0, 0.0, 10.0, 10.0).area_within(&box_of), 10.0);
    /// ```
    pub fn area_within(&self, bounds: &Bounds2) -> f64 {
        self.within(bounds).area()
    }
}

impl Region {
    /// The exact area of what lies in a rectangle, mm².
    pub fn area_within(&self, bounds: &Bounds2) -> f64 {
        let holes = self.holes.iter().map(|h| h.area_within(bounds));
        self.outer.area_within(bounds) - holes.sum::<f64>()
    }

    /// The exact moments of what lies in a rectangle.
    pub fn moments_within(&self, bounds: &Bounds2) -> Moments {
        let own = self.outer.within(bounds).moments();
        let holes = self.holes.iter().map(|h| h.within(bounds).moments());
        holes.fold(own, |sum, hole| sum - hole)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::PI;

    fn bounds(x0: f64, y0: f64, x1: f64, y1: f64) -> Bounds2 {
        Bounds2 {
            low: Point2::new(x0, y0),
            high: Point2::new(x1, y1),
        }
    }

    #[test]
    fn a_disc_is_cut_into_the_segments_of_the_handbook() {
        // A disc of radius 10; a segment of height h has r² acos((r − h)/r) − (r − h) √(2rh − h²).
        let disc = Outline::rounded_rectangle(-10.0, -10.0, 10.0, 10.0, 10.0);
        let segment = 100.0 * 0.4_f64.acos() - 4.0 * (100.0_f64 - 16.0).sqrt();
        let close = |a: f64, b: f64| assert!((a - b).abs() < 1e-9, "{a} for {b}");
        close(disc.area_within(&bounds(4.0, -20.0, 20.0, 20.0)), segment);
        close(disc.area_within(&bounds(-20.0, -20.0, 20.0, -4.0)), segment);
        close(disc.area_within(&bounds(0.0, 0.0, 20.0, 20.0)), PI * 25.0);
        close(
            disc.area_within(&bounds(-4.0, -20.0, 4.0, 20.0)),
            PI * 100.0 - 2.0 * segment,
        );
        close(disc.area_within(&bounds(-3.0, -3.0, 3.0, 3.0)), 36.0);
        close(disc.area_within(&bounds(20.0, 0.0, 30.0, 10.0)), 0.0);
    }

    #[test]
    fn the_parts_of_an_angle_add_up_and_the_notch_counts_once() {
        // An L of 10 × 10 less 6 × 6, in two rectangles side by side: 4 × 10 and 6 × 4.
        let corners = [
            (0.0, 0.0),
            (10.0, 0.0),
            (10.0, 4.0),
            (4.0, 4.0),
            (4.0, 10.0),
            (0.0, 10.0),
        ];
        let points: Vec<_> = corners.iter().map(|c| Point2::new(c.0, c.1)).collect();
        let angle = Outline::polygon(&points);
        assert_eq!(angle.area_within(&bounds(-1.0, -1.0, 4.0, 11.0)), 40.0);
        assert_eq!(angle.area_within(&bounds(4.0, -1.0, 11.0, 11.0)), 24.0);
        // A cut across both arms leaves two pieces: 4 × 2 and 2 × 4 beside a diagonal hole.
        assert_eq!(angle.area_within(&bounds(2.0, 2.0, 6.0, 6.0)), 12.0);
    }

    #[test]
    fn what_lies_in_a_rectangle_has_its_own_middle() {
        // 100 × 60 with a hole from (10, 10) to (30, 30), cut at x = 50: 3000 - 400, its middle by hand
        // (25 · 3000 - 20 · 400) / 2600 = 25.769, (30 · 3000 - 20 · 400) / 2600 = 31.538.
        let region = Region {
            outer: Outline::rectangle(0.0, 0.0, 100.0, 60.0),
            holes: vec![Outline::rectangle(10.0, 10.0, 30.0, 30.0)],
        };
        let m = region.moments_within(&bounds(-5.0, -5.0, 50.0, 65.0));
        assert!((m.area - 2600.0).abs() < 1e-9);
        assert!((m.centroid().x - 67_000.0 / 2600.0).abs() < 1e-9);
        assert!((m.centroid().y - 82_000.0 / 2600.0).abs() < 1e-9);
        let nothing = region.moments_within(&bounds(200.0, 0.0, 300.0, 60.0));
        assert_eq!(nothing.area, 0.0);
    }
}
