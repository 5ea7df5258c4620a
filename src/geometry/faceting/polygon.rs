//! A plane polygon with holes cut into triangles.

use earcut::{Earcut, refine};

/// Twice the signed area of a triangle.
fn turn(points: &[[f64; 2]], [a, b, c]: [usize; 3]) -> f64 {
    let [p, q, r] = [points[a], points[b], points[c]];
    (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])
}

/// Triangles, counter-clockwise, that cover a polygon and use each of its points, also those in a straight line.
///
/// `points` holds the outer ring and then the holes; `holes` says where each hole begins. `None` when the rings cross
/// or are without area.
pub fn triangulate(points: &[[f64; 2]], holes: &[usize]) -> Option<Vec<[usize; 3]>> {
    let holes: Vec<u32> = holes.iter().map(|h| *h as u32).collect();
    let mut flat: Vec<u32> = Vec::with_capacity(3 * (points.len() + 2 * holes.len()));
    Earcut::new().earcut(points.iter().copied(), &holes, &mut flat);
    let expected = (points.len() + 2 * holes.len()).checked_sub(2)?;
    if flat.len() / 3 != expected {
        flat = with_dropped_points(points, &flat);
    }
    refine(&mut flat, points);
    let triangles: Vec<[usize; 3]> = flat
        .chunks_exact(3)
        .map(|t| [t[0] as usize, t[1] as usize, t[2] as usize])
        .map(|t| {
            if turn(points, t) < 0.0 {
                [t[0], t[2], t[1]]
            } else {
                t
            }
        })
        .collect();
    (triangles.len() == expected && expected > 0).then_some(triangles)
}

/// The same triangles, split where a point lies on one of their sides.
///
/// The ear cutter leaves out a point in the middle of a straight line; a neighbour that keeps it would not fit.
fn with_dropped_points(points: &[[f64; 2]], flat: &[u32]) -> Vec<u32> {
    let mut open: Vec<[usize; 3]> = flat
        .chunks_exact(3)
        .map(|t| [t[0] as usize, t[1] as usize, t[2] as usize])
        .collect();
    let mut done = Vec::with_capacity(flat.len());
    while let Some(triangle) = open.pop() {
        match split(points, triangle) {
            Some(halves) => open.extend(halves),
            None => done.extend(triangle.map(|i| i as u32)),
        }
    }
    done
}

/// The two halves of a triangle with a point on one of its sides.
fn split(points: &[[f64; 2]], triangle: [usize; 3]) -> Option<[[usize; 3]; 2]> {
    (0..3).find_map(|i| {
        let [a, b, c] = [triangle[i], triangle[(i + 1) % 3], triangle[(i + 2) % 3]];
        let on = (0..points.len()).find(|p| lies_between(points[*p], points[a], points[b]))?;
        Some([[a, on, c], [on, b, c]])
    })
}

/// True when `p` lies on the line from `a` to `b`, off both ends, as near as numbers go.
fn lies_between(p: [f64; 2], a: [f64; 2], b: [f64; 2]) -> bool {
    let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
    let (px, py) = (p[0] - a[0], p[1] - a[1]);
    let length2 = dx * dx + dy * dy;
    let along = (px * dx + py * dy) / length2;
    let off = (px * dy - py * dx).abs() / length2;
    p != a && p != b && along > 0.0 && along < 1.0 && off < 1e-12
}

#[cfg(test)]
mod tests {
    use super::*;

    fn area(points: &[[f64; 2]], triangles: &[[usize; 3]]) -> f64 {
        triangles.iter().map(|t| turn(points, *t) / 2.0).sum()
    }

    #[test]
    fn a_point_in_a_straight_line_is_kept() {
        let points = [
            [0.0, 0.0],
            [1.0, 0.0],
            [2.0, 0.0],
            [3.0, 0.0],
            [3.0, 1.0],
            [3.0, 2.0],
            [0.0, 2.0],
            [0.0, 1.0],
        ];
        let triangles = triangulate(&points, &[]).unwrap();
        assert_eq!(triangles.len(), 6);
        assert!((area(&points, &triangles) - 6.0).abs() < 1e-12);
        for p in 0..points.len() {
            assert!(triangles.iter().any(|t| t.contains(&p)), "{p} was dropped");
        }
    }

    #[test]
    fn holes_in_a_row_are_left_open() {
        let mut points = vec![[0.0, 0.0], [100.0, 0.0], [100.0, 10.0], [0.0, 10.0]];
        let mut holes = Vec::new();
        for i in 0..9 {
            let x = 5.0 + 10.0 * f64::from(i);
            holes.push(points.len());
            points.extend([[x, 4.0], [x, 6.0], [x + 5.0, 6.0], [x + 5.0, 4.0]]);
        }
        let triangles = triangulate(&points, &holes).unwrap();
        assert!((area(&points, &triangles) - (1000.0 - 90.0)).abs() < 1e-9);
        assert!(triangles.iter().all(|t| turn(&points, *t) > 1e-6));
    }

    #[test]
    fn nothing_comes_of_nothing() {
        assert!(triangulate(&[], &[]).is_none());
        assert!(triangulate(&[[0.0, 0.0], [1.0, 0.0]], &[]).is_none());
        assert!(triangulate(&[[0.0, 0.0], [1.0, 0.0], [2.0, 0.0]], &[]).is_none());
    }
}
