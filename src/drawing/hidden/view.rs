//! What an orthographic view shows.

use super::clip::Occluder;
use super::{Screen, Shape};
use crate::geometry::{Placement, Point2, Point3, Vector2, Vector3};
use crate::plan::Face;
use nalgebra::{Matrix3, Rotation3, Translation3, UnitQuaternion};

/// Pieces shorter than this are dropped, millimetres: they come from rounding where surfaces meet.
const SHORTEST: f64 = 0.05;

/// An orthographic view: the motion from the world to x across, y up the sheet, z towards the eye.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct View(Placement);

impl View {
    /// The island from above, world x across and world y up the sheet.
    pub fn from_above() -> Self {
        Self(Placement::identity())
    }

    /// What one sees standing in front of a face: x is s along the face, y the height above the datum, z the distance
    /// in front of the face.
    pub fn of_face(face: &Face) -> Self {
        let flat = |v: Vector2| Vector3::new(v.x, v.y, 0.0);
        let axes = Matrix3::from_columns(&[flat(face.along), Vector3::z(), flat(face.outward)]);
        let turn = UnitQuaternion::from_rotation_matrix(&Rotation3::from_matrix_unchecked(axes));
        let shift = Translation3::new(face.start.x, face.start.y, 0.0);
        Self(Placement::from_parts(shift, turn).inverse())
    }

    /// The motion from a part's own coordinates to the view.
    pub fn of_part(&self, placement: &Placement) -> Placement {
        self.0 * placement
    }

    /// A world point in the view.
    pub fn point(&self, at: Point3) -> Point3 {
        self.0 * at
    }
}

/// A shape in its place in the view.
#[derive(Clone, Copy, Debug)]
pub struct Placed<'a> {
    /// The shape.
    pub shape: &'a Shape,
    /// From the shape's own coordinates to the view's.
    pub motion: Placement,
}

/// A visible piece of an edge, in view coordinates.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// One end.
    pub from: Point2,
    /// The other.
    pub to: Point2,
    /// Number of what it belongs to, in the order given.
    pub of: usize,
}

/// All pieces of edges that a view of some bodies shows. Edges of two bodies that fall together come out twice: see
/// [`super::merge`].
pub fn visible(bodies: &[Placed]) -> Vec<Line> {
    let moved: Vec<Vec<Point3>> = bodies
        .iter()
        .map(|b| b.shape.points.iter().map(|p| b.motion * p).collect())
        .collect();
    let facing = bodies.iter().zip(&moved).flat_map(|(body, points)| {
        let triangles = body.shape.triangles.iter();
        triangles.filter_map(|t| Occluder::new(t.map(|i| points[i as usize])))
    });
    let screen = Screen::new(facing.collect());
    let mut lines = Vec::new();
    for (of, (body, points)) in bodies.iter().zip(&moved).enumerate() {
        for [a, b] in outline(body, points) {
            let long = (b - a).xy().norm();
            if long < SHORTEST {
                continue;
            }
            let seen = screen.seen(a, b);
            let pieces = seen.iter().filter(|(s, e)| (e - s) * long >= SHORTEST);
            lines.extend(pieces.map(|&(s, e)| Line {
                from: (a + (b - a) * s).xy(),
                to: (a + (b - a) * e).xy(),
                of,
            }));
        }
    }
    lines
}

/// The creases on the near side and the silhouettes of one body.
fn outline<'a>(body: &'a Placed, points: &'a [Point3]) -> impl Iterator<Item = [Point3; 2]> + 'a {
    let towards = |triangle: u32| (body.motion * body.shape.normals[triangle as usize]).z > 1e-6;
    body.shape.edges.iter().filter_map(move |edge| {
        let [first, second] = edge.sides.map(towards);
        let shows = (first || second) && (edge.sharp || first != second);
        shows.then(|| edge.ends.map(|i| points[i as usize]))
    })
}

#[cfg(test)]
mod tests {
    use super::super::shape::tests::cuboid;
    use super::*;
    use crate::geometry::Bounds2;

    fn at(x: f64, y: f64, z: f64) -> Placement {
        Placement::translation(x, y, z)
    }

    fn total(lines: &[Line]) -> f64 {
        lines.iter().map(|l| (l.to - l.from).norm()).sum()
    }

    #[test]
    fn a_box_shows_its_front_only() {
        let shape = Shape::new(&cuboid(30.0, 20.0, 10.0));
        let lines = visible(&[Placed {
            shape: &shape,
            motion: at(0.0, 0.0, 0.0),
        }]);
        assert_eq!(lines.len(), 4);
        assert!((total(&lines) - 100.0).abs() < 1e-9);
    }

    #[test]
    fn a_nearer_box_hides_a_piece_of_a_farther_one() {
        // The near box covers x 10..20 and sticks out above and below: of the far box's two long edges (30 each) ten
        // are hidden, its two short ones are free: 2 × 20 + 2 × 8. The near one shows all: 2 × 10 + 2 × 20.
        let (far, near) = (
            Shape::new(&cuboid(30.0, 8.0, 5.0)),
            Shape::new(&cuboid(10.0, 20.0, 5.0)),
        );
        let lines = visible(&[
            Placed {
                shape: &far,
                motion: at(0.0, 0.0, 0.0),
            },
            Placed {
                shape: &near,
                motion: at(10.0, -6.0, 50.0),
            },
        ]);
        let of = |n| {
            lines
                .iter()
                .filter(|l| l.of == n)
                .copied()
                .collect::<Vec<_>>()
        };
        assert!((total(&of(0)) - 56.0).abs() < 1e-3);
        assert!((total(&of(1)) - 60.0).abs() < 1e-3);
    }

    #[test]
    fn a_box_exactly_behind_another_does_not_show() {
        let shape = Shape::new(&cuboid(30.0, 20.0, 10.0));
        let lines = visible(
            &[at(0.0, 0.0, 0.0), at(0.0, 0.0, -10.0)].map(|motion| Placed {
                shape: &shape,
                motion,
            }),
        );
        assert!(lines.iter().all(|l| l.of == 0));
    }

    #[test]
    fn the_view_of_a_face_runs_left_to_right_as_seen_from_outside() {
        // A seating face: its outside looks along +y, so that s runs along -x.
        let face = Face {
            run: 0,
            side: crate::design::Side::Seating,
            mark: "CS".into(),
            name: String::new(),
            start: Point2::new(3000.0, 800.0),
            along: Vector2::new(-1.0, 0.0),
            outward: Vector2::new(0.0, 1.0),
            length: 3000.0,
            wall: false,
            corner: crate::plan::Corner::Convex,
            openings: Vec::new(),
        };
        let p = View::of_face(&face).point(Point3::new(2900.0, 850.0, 700.0));
        assert!((p - Point3::new(100.0, 700.0, 50.0)).norm() < 1e-9);
    }

    proptest::proptest! {
        /// Against an independent check: walk along every edge of random boxes in steps; a step shows exactly when no
        /// box stands in front of that point. Boxes are axis-aligned, so that test needs no triangles.
        #[test]
        fn visible_lengths_agree_with_a_walk_along_the_edges(
            boxes in proptest::collection::vec((0_u8..20, 0_u8..20, 0_u8..20, 1_u8..15, 1_u8..15, 1_u8..15), 1..7)
        ) {
            // Spread in depth so that no two boxes share volume.
            let placed: Vec<_> = boxes.iter().enumerate().map(|(i, b)| {
                let low = Point3::new(f64::from(b.0), f64::from(b.1), 40.0 * i as f64 + f64::from(b.2));
                let size = Vector3::new(f64::from(b.3), f64::from(b.4), f64::from(b.5)) + Vector3::repeat(0.5);
                (low, size)
            }).collect();
            let shapes: Vec<_> = placed.iter().map(|(_, s)| Shape::new(&cuboid(s.x, s.y, s.z))).collect();
            let bodies: Vec<_> = placed.iter().zip(&shapes)
                .map(|((low, _), shape)| Placed { shape, motion: at(low.x, low.y, low.z) }).collect();
            let lines = visible(&bodies);
            for (i, (low, size)) in placed.iter().enumerate() {
                let high = low + size;
                let nearer = &placed[i + 1..];
                let hidden = |p: Point2| nearer.iter().any(|(l, s)| {
                    let b = Bounds2 { low: l.xy(), high: (l + s).xy() };
                    p.x >= b.low.x && p.x <= b.high.x && p.y >= b.low.y && p.y <= b.high.y
                });
                let corners = [low.xy(), Point2::new(high.x, low.y), high.xy(), Point2::new(low.x, high.y)];
                let mut walked = 0.0;
                for k in 0..4 {
                    let (a, b) = (corners[k], corners[(k + 1) % 4]);
                    let steps = 3000;
                    let shown = (0..steps).filter(|n| {
                        let p = a + (b - a) * ((f64::from(*n) + 0.5) / f64::from(steps));
                        !hidden(p)
                    }).count();
                    walked += (b - a).norm() * shown as f64 / f64::from(steps);
                }
                let drawn: f64 = lines.iter().filter(|l| l.of == i).map(|l| (l.to - l.from).norm()).sum();
                proptest::prop_assert!((walked - drawn).abs() < 0.1, "box {}: walked {} drawn {}", i, walked, drawn);
            }
        }
    }
}
