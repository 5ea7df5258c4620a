//! A plane polygon with holes cut into triangles.

use earcut::{Earcut, refine};
use spade::{ConstrainedDelaunayTriangulation, Point2, Triangulation};

/// Twice the signed area of a triangle.
fn turn(points: &[[f64; 2]], [a, b, c]: [usize; 3]) -> f64 {
    let [p, q, r] = [points[a], points[b], points[c]];
    (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])
}

/// A triangle lower than this is a sliver, millimetres.
const SLIVER: f64 = 1e-5;

/// Triangles, counter-clockwise, that cover a polygon and use each of its points, also those in a straight line.
///
/// `points` holds the outer ring and then the holes; `holes` says where each hole begins. `None` when the rings cross
/// or are without area.
pub fn triangulate(points: &[[f64; 2]], holes: &[usize]) -> Option<Vec<[usize; 3]>> {
    let expected = (points.len() + 2 * holes.len()).checked_sub(2)?;
    let whole = |triangles: &Vec<[usize; 3]>| triangles.len() == expected && expected > 0;
    let ears = cut_ears(points, holes);
    if whole(&ears) && ears.iter().all(|t| height(points, *t) > SLIVER) {
        return Some(ears);
    }
    constrained(points, holes).filter(whole)
}

/// Triangles, counter-clockwise, of what some sides enclose, in whatever rings they hang together; `points` are all
/// different and all used. `None` when sides cross.
pub fn fill(points: &[[f64; 2]], sides: &[[usize; 2]]) -> Option<Vec<[usize; 3]>> {
    enclosed(points, sides.to_vec())
}

/// The lowest height of a triangle, signed.
fn height(points: &[[f64; 2]], t: [usize; 3]) -> f64 {
    let length = |i: usize, j: usize| {
        let [p, q] = [points[t[i]], points[t[j]]];
        (q[0] - p[0]).hypot(q[1] - p[1])
    };
    turn(points, t) / length(0, 1).max(length(1, 2)).max(length(2, 0))
}

/// The quick way, by cutting ears: it leaves out points in a straight line, and makes slivers of points nearly so.
fn cut_ears(points: &[[f64; 2]], holes: &[usize]) -> Vec<[usize; 3]> {
    let holes: Vec<u32> = holes.iter().map(|h| *h as u32).collect();
    let mut flat: Vec<u32> = Vec::with_capacity(3 * (points.len() + 2 * holes.len()));
    Earcut::new().earcut(points.iter().copied(), &holes, &mut flat);
    refine(&mut flat, points);
    flat.chunks_exact(3)
        .map(|t| [t[0] as usize, t[1] as usize, t[2] as usize])
        .map(|t| {
            if turn(points, t) < 0.0 {
                [t[0], t[2], t[1]]
            } else {
                t
            }
        })
        .collect()
}

/// The slow way: a constrained Delaunay triangulation, exact in its decisions.
fn constrained(points: &[[f64; 2]], holes: &[usize]) -> Option<Vec<[usize; 3]>> {
    let starts = std::iter::once(0).chain(holes.iter().copied());
    let ends = holes.iter().copied().chain([points.len()]);
    let sides = starts
        .zip(ends)
        .flat_map(|(a, b)| (a..b).map(move |i| [i, if i + 1 < b { i + 1 } else { a }]));
    enclosed(points, sides.collect())
}

fn enclosed(points: &[[f64; 2]], sides: Vec<[usize; 2]>) -> Option<Vec<[usize; 3]>> {
    let corners = points.iter().map(|p| Point2::new(p[0], p[1])).collect();
    let mut crossing = false;
    let net =
        ConstrainedDelaunayTriangulation::<Point2<f64>>::try_bulk_load_cdt(corners, sides, |_| {
            crossing = true;
        });
    let net = net
        .ok()
        .filter(|n| !crossing && n.num_vertices() == points.len())?;
    let inside = inside(&net);
    let triangles = net.inner_faces().filter(|f| inside[f.index()]);
    Some(triangles.map(|f| f.vertices().map(|v| v.index())).collect())
}

/// Which faces of a net lie inside its rings: those reached from outside over an odd number of sides.
///
/// Asking whether a face's middle lies inside would go wrong on a sliver.
fn inside(net: &ConstrainedDelaunayTriangulation<Point2<f64>>) -> Vec<bool> {
    let mut found = vec![None; net.num_all_faces()];
    let outer = net.outer_face();
    found[outer.index()] = Some(false);
    let border = net.directed_edges().filter(|e| e.face() == outer);
    let mut open: Vec<_> = border.map(|e| (e.rev(), false)).collect();
    while let Some((edge, beyond)) = open.pop() {
        let face = edge.face();
        if found[face.index()].is_some() {
            continue;
        }
        let here = beyond != edge.is_constraint_edge();
        found[face.index()] = Some(here);
        open.extend([edge.next(), edge.prev()].map(|e| (e.rev(), here)));
    }
    found.into_iter().map(|f| f.unwrap_or(false)).collect()
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
    fn the_quick_and_the_slow_way_cover_the_same() {
        let mut points = vec![
            [0.0, 0.0],
            [60.0, 0.0],
            [60.0, 40.0],
            [30.0, 20.0],
            [0.0, 40.0],
        ];
        let hole = points.len();
        points.extend([[10.0, 5.0], [10.0, 15.0], [20.0, 15.0], [20.0, 5.0]]);
        // 60 · 40 less the notch of 60 · 20 / 2 less the hole of 100.
        for triangles in [
            cut_ears(&points, &[hole]),
            constrained(&points, &[hole]).unwrap(),
        ] {
            assert_eq!(triangles.len(), 9);
            assert!((area(&points, &triangles) - 1700.0).abs() < 1e-9);
            assert!(triangles.iter().all(|t| turn(&points, *t) > 0.0));
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
