//! How much ground is free between the finished faces and what stands beside them.

use crate::drawing::plans::spot::Spot;
use crate::geometry::{Bounds2, Point2, cross, sides};

/// Free ground between the island and something beside it, along one axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Gap {
    /// 0 along x, 1 along y.
    axis: usize,
    /// The finished face's coordinate and that of the object.
    ends: (f64, f64),
    /// Where both lie side by side, along the other axis; for an object past a corner its own stretch.
    along: (f64, f64),
    /// The finished corner that an extension line comes from, where the object stands past a corner.
    corner: Option<f64>,
}

/// The gaps between an area and the finished faces, whose corners these are: the nearest face that it stands before each
/// way; where it stands before none, both ways from the nearest corner.
pub(super) fn gaps(area: &Bounds2, finished: &[Point2]) -> Vec<Gap> {
    let mut found: Vec<Gap> = Vec::new();
    for axis in 0..2 {
        for low in [true, false] {
            let all = sides(finished).filter_map(|side| before(area, side, axis));
            let own = all.filter(|gap| (gap.ends.1 > gap.ends.0) == low);
            let seen = own.filter(|gap| gap.is_open(finished));
            found.extend(seen.min_by(|a, b| a.width().total_cmp(&b.width())));
        }
    }
    if found.is_empty() {
        return past_corner(area, finished);
    }
    found
}

/// The gap between an area and a side square to an axis, where the area stands before the side's outside.
fn before(area: &Bounds2, [from, to]: [Point2; 2], axis: usize) -> Option<Gap> {
    let other = 1 - axis;
    if (to[axis] - from[axis]).abs() > 0.01 {
        return None;
    }
    let face = from[axis];
    // Corners run counter-clockwise: outside is to the right.
    let runs_up = to[other] > from[other];
    let outside_is_high = runs_up == (axis == 0);
    let object = if outside_is_high {
        area.low[axis]
    } else {
        area.high[axis]
    };
    let free = if outside_is_high {
        object - face
    } else {
        face - object
    };
    let low = area.low[other].max(from[other].min(to[other]));
    let high = area.high[other].min(from[other].max(to[other]));
    (free > 1.0 && low < high).then_some(Gap {
        axis,
        ends: (face, object),
        along: (low, high),
        corner: None,
    })
}

/// Both ways from the corner that is nearest to an area which stands before no face.
fn past_corner(area: &Bounds2, finished: &[Point2]) -> Vec<Gap> {
    let touches = |side: [Point2; 2]| Bounds2::around(side).is_some_and(|s| s.overlaps(area, -1.0));
    if sides(finished).any(touches) {
        return Vec::new();
    }
    let near = |p: &Point2| Point2::from(p.coords.sup(&area.low.coords).inf(&area.high.coords));
    let away = |p: &Point2| (near(p) - p).norm();
    let nearest = finished.iter().min_by(|a, b| away(a).total_cmp(&away(b)));
    let Some((corner, at)) = nearest.map(|p| (*p, near(p))) else {
        return Vec::new();
    };
    let of = |axis: usize| Gap {
        axis,
        ends: (corner[axis], at[axis]),
        along: (area.low[1 - axis], area.high[1 - axis]),
        corner: Some(corner[1 - axis]),
    };
    (0..2).map(of).filter(|gap| gap.width() > 1.0).collect()
}

impl Gap {
    pub fn width(&self) -> f64 {
        (self.ends.1 - self.ends.0).abs()
    }

    /// True when nothing of the island lies in it.
    fn is_open(&self, finished: &[Point2]) -> bool {
        let middle = f64::midpoint(self.along.0, self.along.1);
        let toward = (self.ends.1 - self.ends.0).signum() * 0.5;
        let way = [
            self.point(self.ends.0 + toward, middle),
            self.point(self.ends.1, middle),
        ];
        !sides(finished).any(|side| cross(way, side))
    }

    /// Where along the other axis it may be dimensioned.
    pub fn places(&self) -> impl Iterator<Item = f64> {
        let (low, high) = self.along;
        // Past a corner in the middle of the object; beside a face near its ends, away from what is in the middle.
        let fractions = match self.corner {
            Some(_) => [0.5, 0.25, 0.75, 0.1, 0.9, 0.35, 0.65],
            None => [0.92, 0.08, 0.85, 0.15, 0.75, 0.25, 0.5],
        }
        .into_iter();
        fractions.map(move |f| low + (high - low) * f)
    }

    pub fn spot(&self, at: f64) -> Spot {
        Spot {
            from: self.point(self.ends.0, at),
            to: self.point(self.ends.1, at),
            extended_from: self.corner.map(|c| self.point(self.ends.0, c)),
        }
    }

    fn point(&self, v: f64, other: f64) -> Point2 {
        let mut p = Point2::origin();
        p[self.axis] = v;
        p[1 - self.axis] = other;
        p
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn area(x0: f64, y0: f64, x1: f64, y1: f64) -> Bounds2 {
        Bounds2 {
            low: Point2::new(x0, y0),
            high: Point2::new(x1, y1),
        }
    }

    fn polygon(points: &[(f64, f64)]) -> Vec<Point2> {
        points.iter().map(|(x, y)| Point2::new(*x, *y)).collect()
    }

    /// An L: 3,000 along x and 800 deep, with a leg of 800 going down to -2,000 at its right end.
    fn corner_island() -> Vec<Point2> {
        polygon(&[
            (0.0, 0.0),
            (2200.0, 0.0),
            (2200.0, -2000.0),
            (3000.0, -2000.0),
            (3000.0, 800.0),
            (0.0, 800.0),
        ])
    }

    #[test]
    fn a_post_past_a_corner_is_measured_both_ways_from_it() {
        // A post whose near corner is 587.6 left of the island's corner and 892.4 above it.
        let post = area(-762.0, 1676.4, -609.6, 1828.8);
        let island = polygon(&[
            (-22.0, -22.0),
            (3070.0, -22.0),
            (3070.0, 784.0),
            (-22.0, 784.0),
        ]);
        let gaps = gaps(&post, &island);
        let widths: Vec<f64> = gaps.iter().map(Gap::width).collect();
        assert!((widths[0] - 587.6).abs() < 1e-9 && (widths[1] - 892.4).abs() < 1e-9);
        assert_eq!(gaps[0].corner, Some(784.0));
        assert_eq!(gaps[1].corner, Some(-22.0));
    }

    #[test]
    fn what_stands_in_the_notch_of_an_l_is_measured_from_both_its_faces() {
        let post = area(1000.0, -1000.0, 1100.0, -900.0);
        let mut widths: Vec<f64> = gaps(&post, &corner_island())
            .iter()
            .map(Gap::width)
            .collect();
        widths.sort_by(f64::total_cmp);
        assert_eq!(widths, [900.0, 1100.0]);
    }

    #[test]
    fn what_stands_past_a_leg_is_measured_from_a_face_and_not_from_the_air() {
        // Left of the notch and lower than the first run: past the first run's corner.
        let post = area(-700.0, -700.0, -600.0, -600.0);
        let gaps = gaps(&post, &corner_island());
        let ends: Vec<_> = gaps.iter().map(|g| (g.axis, g.ends)).collect();
        // Before the leg's side at 2,200, from -600, nothing in between: that face counts.
        assert_eq!(ends, [(0, (2200.0, -600.0))]);
    }

    #[test]
    fn a_face_behind_another_run_does_not_count() {
        // Right of the leg: the face at 3,000 is before it, that at 2,200 is not.
        let post = area(3500.0, -1000.0, 3600.0, -900.0);
        let widths: Vec<f64> = gaps(&post, &corner_island())
            .iter()
            .map(Gap::width)
            .collect();
        assert_eq!(widths, [500.0]);
    }
}
