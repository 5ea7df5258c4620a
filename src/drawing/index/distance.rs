//! How far something is from the island, in plan.

use crate::geometry::{Bounds2, Point2, cross, distance, sides};

/// The least distance between a closed polygon and a box, millimetres; zero where they meet.
pub fn between(polygon: &[Point2], area: &Bounds2) -> f64 {
    let corners = [
        area.low,
        Point2::new(area.high.x, area.low.y),
        area.high,
        Point2::new(area.low.x, area.high.y),
    ];
    let inside_box = |p: &Point2| (0..2).all(|i| (area.low[i]..=area.high[i]).contains(&p[i]));
    if polygon.iter().any(inside_box) || corners.iter().any(|c| is_inside(polygon, *c)) {
        return 0.0;
    }
    let mut least = f64::INFINITY;
    for a in sides(polygon) {
        for b in sides(&corners) {
            if cross(a, b) {
                return 0.0;
            }
            least = least
                .min(distance(a[0], b))
                .min(distance(a[1], b))
                .min(distance(b[0], a))
                .min(distance(b[1], a));
        }
    }
    if least.is_finite() { least } else { 0.0 }
}

/// True when a point lies inside a polygon, by the parity of crossings.
fn is_inside(polygon: &[Point2], p: Point2) -> bool {
    let crossed = sides(polygon).filter(|[a, b]| {
        (a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x)
    });
    crossed.count() % 2 == 1
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

    #[test]
    fn distances_to_an_l_are_those_on_paper() {
        let l = [
            (0.0, 0.0),
            (100.0, 0.0),
            (100.0, 40.0),
            (40.0, 40.0),
            (40.0, 100.0),
            (0.0, 100.0),
        ];
        let l = l.map(|(x, y)| Point2::new(x, y));
        let close = |b: Bounds2, d: f64| (between(&l, &b) - d).abs() < 1e-9;
        // In the notch, though inside the box round the L.
        assert!(close(area(60.0, 70.0, 80.0, 90.0), 20.0));
        // Past a corner: 3, 4, 5.
        assert!(close(area(103.0, 44.0, 110.0, 50.0), 5.0));
        // Over it, in it, across it, touching it.
        assert!(close(area(-50.0, -50.0, 200.0, 200.0), 0.0));
        assert!(close(area(10.0, 10.0, 20.0, 20.0), 0.0));
        assert!(close(area(-10.0, 50.0, 90.0, 60.0), 0.0));
        assert!(close(area(100.0, 10.0, 120.0, 20.0), 0.0));
        assert!(close(area(-30.0, 20.0, -10.0, 30.0), 10.0));
    }
}
