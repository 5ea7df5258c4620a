//! A closed plane curve of straight lines and circular arcs.

use super::{Bounds2, Point2, Vector2};
use std::f64::consts::PI;

/// One corner of an [`Outline`] and how the curve leaves it.
///
/// `bulge` is the tangent of a quarter of the arc's angle, as in a polyline of the DXF reference: 0 is a straight
/// segment, positive turns counter-clockwise, 1 is a half circle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Vertex {
    /// Where it is, millimetres.
    pub at: Point2,
    /// How the segment that starts here bends.
    pub bulge: f64,
}

impl Vertex {
    /// A corner that a straight segment leaves.
    pub fn sharp(x: f64, y: f64) -> Self {
        Self::bent(x, y, 0.0)
    }

    /// A corner that an arc leaves.
    pub fn bent(x: f64, y: f64, bulge: f64) -> Self {
        Self {
            at: Point2::new(x, y),
            bulge,
        }
    }
}

/// One side of an outline, from `from` to `to`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Segment {
    /// Where it starts.
    pub from: Point2,
    /// Where it ends.
    pub to: Point2,
    /// See [`Vertex::bulge`].
    pub bulge: f64,
}

/// The circle that a bent segment lies on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Arc {
    /// Its middle.
    pub centre: Point2,
    /// Its radius, millimetres.
    pub radius: f64,
    /// The angle of the start, radians from x.
    pub start: f64,
    /// The angle swept, radians, counter-clockwise positive.
    pub sweep: f64,
}

impl Segment {
    /// The arc of a bent segment; `None` for a straight one.
    pub fn arc(&self) -> Option<Arc> {
        if self.bulge == 0.0 {
            return None;
        }
        let chord = self.to - self.from;
        let b = self.bulge;
        let left = Vector2::new(-chord.y, chord.x);
        let centre = nalgebra::center(&self.from, &self.to) + left * ((1.0 - b * b) / (4.0 * b));
        let spoke = self.from - centre;
        Some(Arc {
            centre,
            radius: chord.norm() * (1.0 + b * b) / (4.0 * b.abs()),
            start: spoke.y.atan2(spoke.x),
            sweep: 4.0 * b.atan(),
        })
    }

    /// Its length along the curve, millimetres.
    pub fn length(&self) -> f64 {
        self.arc().map_or_else(
            || (self.to - self.from).norm(),
            |a| a.radius * a.sweep.abs(),
        )
    }

    /// The point at a fraction of the way along.
    pub fn at(&self, fraction: f64) -> Point2 {
        self.arc().map_or_else(
            || self.from + (self.to - self.from) * fraction,
            |a| {
                let angle = a.start + a.sweep * fraction;
                a.centre + Vector2::new(angle.cos(), angle.sin()) * a.radius
            },
        )
    }

    /// How many chords keep the sagitta of each within `tolerance`; no fewer than two, and one for each quarter turn.
    pub fn chords(&self, tolerance: f64) -> usize {
        self.arc().map_or(1, |a| {
            let step = 2.0 * (1.0 - (tolerance / a.radius).min(1.0)).acos();
            let turn = a.sweep.abs() - 1e-9;
            ((turn / step.clamp(1e-3, PI / 2.0)).ceil() as usize).clamp(2, 4096)
        })
    }
}

/// A closed curve without crossings; counter-clockwise when it bounds material, clockwise never stored.
///
/// Holes of a [`super::Region`] are stored counter-clockwise too: what reads them turns them.
#[derive(Clone, Debug, PartialEq)]
pub struct Outline {
    vertices: Vec<Vertex>,
}

impl Outline {
    /// Closes a row of vertices; turned round if it came clockwise. Sides without length are left out.
    pub fn new(mut vertices: Vec<Vertex>) -> Self {
        let n = vertices.len();
        let mut next = (0..n)
            .map(|i| (i + 1) % n)
            .map(|i| vertices[i].at)
            .collect::<Vec<_>>()
            .into_iter();
        vertices.retain(|v| {
            next.next()
                .is_none_or(|to| (to - v.at).norm() > 1e-9 || !to.x.is_finite())
        });
        let outline = Self { vertices };
        if outline.area() < 0.0 {
            outline.reversed()
        } else {
            outline
        }
    }

    /// A polygon of straight sides.
    pub fn polygon(points: &[Point2]) -> Self {
        Self::new(points.iter().map(|p| Vertex::sharp(p.x, p.y)).collect())
    }

    /// A rectangle between two corners.
    pub fn rectangle(x0: f64, y0: f64, x1: f64, y1: f64) -> Self {
        Self::polygon(&[
            Point2::new(x0, y0),
            Point2::new(x1, y0),
            Point2::new(x1, y1),
            Point2::new(x0, y1),
        ])
    }

    /// A rectangle with its corners rounded; a radius of zero leaves them sharp.
    pub fn rounded_rectangle(x0: f64, y0: f64, x1: f64, y1: f64, radius: f64) -> Self {
        if radius <= 0.0 {
            return Self::rectangle(x0, y0, x1, y1);
        }
        let r = radius.min((x1 - x0) / 2.0).min((y1 - y0) / 2.0);
        let quarter = (PI / 8.0).tan();
        let mut vertices = vec![
            Vertex::sharp(x0 + r, y0),
            Vertex::bent(x1 - r, y0, quarter),
            Vertex::sharp(x1, y0 + r),
            Vertex::bent(x1, y1 - r, quarter),
            Vertex::sharp(x1 - r, y1),
            Vertex::bent(x0 + r, y1, quarter),
            Vertex::sharp(x0, y1 - r),
            Vertex::bent(x0, y0 + r, quarter),
        ];
        // Where two arcs meet, the straight side between them has no length.
        let n = vertices.len();
        let starts: Vec<_> = (0..n)
            .map(|i| (vertices[(i + 1) % n].at - vertices[i].at).norm() > 1e-9)
            .collect();
        let mut keep = starts.iter();
        vertices.retain(|_| keep.next().copied().unwrap_or(true));
        Self::new(vertices)
    }

    /// The vertices in counter-clockwise order.
    pub fn vertices(&self) -> &[Vertex] {
        &self.vertices
    }

    /// The sides in counter-clockwise order; side `i` starts at vertex `i`.
    pub fn segments(&self) -> impl Iterator<Item = Segment> + '_ {
        let n = self.vertices.len();
        (0..n).map(move |i| Segment {
            from: self.vertices[i].at,
            to: self.vertices[(i + 1) % n].at,
            bulge: self.vertices[i].bulge,
        })
    }

    /// The exact area enclosed, mm²; positive when counter-clockwise.
    pub fn area(&self) -> f64 {
        self.segments()
            .map(|s| {
                let straight = (s.from.x * s.to.y - s.to.x * s.from.y) / 2.0;
                let bow = s.arc().map_or(0.0, |a| {
                    a.radius * a.radius * (a.sweep - a.sweep.sin()) / 2.0
                });
                straight + bow
            })
            .sum()
    }

    /// The exact length of the curve, millimetres.
    pub fn perimeter(&self) -> f64 {
        self.segments().map(|s| s.length()).sum()
    }

    /// The same curve the other way round.
    fn reversed(&self) -> Self {
        let n = self.vertices.len();
        let vertices = (0..n)
            .rev()
            .map(|i| Vertex {
                at: self.vertices[i].at,
                bulge: -self.vertices[(i + n - 1) % n].bulge,
            })
            .collect();
        Self { vertices }
    }

    /// The curve with every point moved by a rigid motion that keeps its sense.
    pub fn moved(&self, motion: &nalgebra::Isometry2<f64>) -> Self {
        let vertices = self
            .vertices
            .iter()
            .map(|v| Vertex {
                at: motion * v.at,
                bulge: v.bulge,
            })
            .collect();
        Self { vertices }
    }

    /// Points along the curve, chords within `tolerance` of the arcs, every vertex among them.
    pub fn flatten(&self, tolerance: f64) -> Vec<Point2> {
        let mut points = Vec::with_capacity(self.vertices.len());
        for s in self.segments() {
            let chords = s.chords(tolerance);
            points.push(s.from);
            points.extend((1..chords).map(|i| s.at(i as f64 / chords as f64)));
        }
        points
    }

    /// The box round the curve.
    pub fn bounds(&self) -> Bounds2 {
        let quarters = self.segments().filter_map(|s| s.arc()).flat_map(|a| {
            (-8..=8).filter_map(move |k| {
                let angle = f64::from(k) * PI / 2.0;
                let fraction = (angle - a.start) / a.sweep;
                (0.0..=1.0)
                    .contains(&fraction)
                    .then(|| a.centre + Vector2::new(angle.cos(), angle.sin()) * a.radius)
            })
        });
        let corners = self.vertices.iter().map(|v| v.at);
        Bounds2::around(corners.chain(quarters)).unwrap_or(Bounds2 {
            low: Point2::origin(),
            high: Point2::origin(),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_rounded_rectangle_has_the_area_of_the_handbook() {
        // 100 × 60 less the four corners: 6000 − (4 − π)·10².
        let outline = Outline::rounded_rectangle(0.0, 0.0, 100.0, 60.0, 10.0);
        assert!((outline.area() - (6000.0 - (4.0 - PI) * 100.0)).abs() < 1e-9);
        assert!((outline.perimeter() - (2.0 * 80.0 + 2.0 * 40.0 + 2.0 * PI * 10.0)).abs() < 1e-9);
        let bounds = outline.bounds();
        assert!((bounds.width() - 100.0).abs() < 1e-9 && (bounds.height() - 60.0).abs() < 1e-9);
    }

    #[test]
    fn a_slot_and_a_disc_are_rounded_rectangles_without_empty_sides() {
        let slot = Outline::rounded_rectangle(0.0, 0.0, 38.1, 101.6, 19.05);
        assert_eq!(slot.vertices().len(), 6);
        let area = 38.1 * (101.6 - 38.1) + PI * 19.05 * 19.05;
        assert!((slot.area() - area).abs() < 1e-9);
        let disc = Outline::rounded_rectangle(-5.0, -5.0, 5.0, 5.0, 5.0);
        assert_eq!(disc.vertices().len(), 4);
        assert!((disc.area() - PI * 25.0).abs() < 1e-9);
    }

    #[test]
    fn a_clockwise_row_is_turned_round_with_its_arcs() {
        let half_disc = Outline::new(vec![Vertex::bent(-5.0, 0.0, -1.0), Vertex::sharp(5.0, 0.0)]);
        assert!((half_disc.area() - PI * 12.5).abs() < 1e-9);
        assert!((half_disc.bounds().high.y - 5.0).abs() < 1e-9);
    }

    #[test]
    fn chords_stay_within_the_tolerance() {
        let outline = Outline::rounded_rectangle(0.0, 0.0, 100.0, 60.0, 25.0);
        for s in outline.segments().filter(|s| s.bulge != 0.0) {
            let n = s.chords(0.1);
            let middle = nalgebra::center(&s.from, &s.at(1.0 / n as f64));
            let arc = s.arc().unwrap();
            assert!(arc.radius - (middle - arc.centre).norm() <= 0.1);
        }
    }
}
