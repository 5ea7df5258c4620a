//! What a view of some bodies shows.

use super::clip::Occluder;
use super::{Line, Screen, Shape};
use crate::geometry::{Placement, Point2, Point3};

/// Pieces shorter than this are dropped, millimetres: they come from rounding where surfaces meet.
const SHORTEST: f64 = 0.05;

/// A shape in its place in the view.
#[derive(Clone, Copy, Debug)]
pub struct Placed<'a> {
    /// The shape.
    pub shape: &'a Shape,
    /// From the shape's own coordinates to the view's.
    pub motion: Placement,
}

/// What a view took to work out.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Effort {
    /// Triangles turned to the eye.
    pub triangles: u64,
    /// Edges held against them.
    pub edges: u64,
    /// Boxes looked into and triangles held against an edge, over all edges.
    pub steps: u64,
}

/// All pieces of edges that a view of some bodies shows. Edges of two bodies that fall together come out twice: see
/// [`super::merge`].
pub fn visible(bodies: &[Placed]) -> Vec<Line> {
    looked(bodies, |_| false).0
}

/// What [`visible`] gives, and the hidden pieces of those bodies whose number `wanted` takes, with `seen` false. The
/// others cost nothing more.
pub fn with_hidden(bodies: &[Placed], wanted: impl Fn(usize) -> bool) -> Vec<Line> {
    looked(bodies, wanted).0
}

/// The work that [`visible`] does, counted: the same on every machine.
pub fn effort(bodies: &[Placed]) -> Effort {
    looked(bodies, |_| false).1
}

/// The points of bodies in the view.
fn moved(bodies: &[Placed]) -> Vec<Vec<Point3>> {
    let points = |b: &Placed| b.shape.points.iter().map(|p| b.motion * p).collect();
    bodies.iter().map(points).collect()
}

/// The triangles turned to the eye.
fn facing(bodies: &[Placed], moved: &[Vec<Point3>]) -> Vec<Occluder> {
    let facing = bodies.iter().zip(moved).flat_map(|(body, points)| {
        let triangles = body.shape.triangles.iter();
        triangles.filter_map(|t| Occluder::new(t.map(|i| points[i as usize])))
    });
    facing.collect()
}

/// How near bodies are at each point of a view.
#[derive(Clone, Debug, Default)]
pub struct Depths(Screen);

impl Depths {
    /// Of some bodies.
    pub fn new(bodies: &[Placed]) -> Self {
        Self(Screen::new(facing(bodies, &moved(bodies))))
    }

    /// z of the view of what is seen at a point; `None` where nothing is.
    pub fn at(&self, point: Point2) -> Option<f64> {
        self.0.nearest_at(point)
    }
}

fn looked(bodies: &[Placed], hidden: impl Fn(usize) -> bool) -> (Vec<Line>, Effort) {
    let moved = moved(bodies);
    let facing = facing(bodies, &moved);
    let mut effort = Effort {
        triangles: facing.len() as u64,
        ..Effort::default()
    };
    let screen = Screen::new(facing);
    let mut lines = Vec::new();
    for (of, (body, points)) in bodies.iter().zip(&moved).enumerate() {
        let wanted = hidden(of);
        for (edge, turned) in outline(body, points, wanted) {
            let mut add =
                |pieces: &[(f64, f64)], seen| pieces_of(edge, pieces, of, seen, &mut lines);
            if turned == Turned::Away {
                add(&[(0.0, 1.0)], false);
                continue;
            }
            effort.edges += 1;
            let seen = screen.seen(edge[0], edge[1], &mut effort.steps);
            add(&seen.0, true);
            if wanted {
                add(&seen.hidden(), false);
            }
        }
    }
    (lines, effort)
}

fn pieces_of(
    [a, b]: [Point3; 2],
    pieces: &[(f64, f64)],
    of: usize,
    seen: bool,
    to: &mut Vec<Line>,
) {
    let long = (b - a).xy().norm();
    let kept = pieces.iter().filter(|(s, e)| (e - s) * long >= SHORTEST);
    to.extend(kept.map(|&(s, e)| {
        let (from, end) = (a + (b - a) * s, a + (b - a) * e);
        Line {
            from: from.xy(),
            to: end.xy(),
            of,
            seen,
            depths: [from.z, end.z],
        }
    }));
}

/// How the surfaces beside an edge stand to the eye.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Turned {
    /// One at least is turned to it.
    Here,
    /// The body itself hides the edge.
    Away,
}

/// The creases on the near side and the silhouettes of one body, and the creases on its far side where `all` are wanted.
fn outline<'a>(
    body: &'a Placed,
    points: &'a [Point3],
    all: bool,
) -> impl Iterator<Item = ([Point3; 2], Turned)> + 'a {
    let towards = |triangle: u32| (body.motion * body.shape.normals[triangle as usize]).z > 1e-6;
    body.shape.edges.iter().filter_map(move |edge| {
        let [first, second] = edge.sides.map(towards);
        let here = first || second;
        let ends = edge.ends.map(|i| points[i as usize]);
        let long = (ends[1] - ends[0]).xy().norm() >= SHORTEST;
        let shows = long && (edge.sharp || first != second) && (here || all);
        shows.then_some((ends, if here { Turned::Here } else { Turned::Away }))
    })
}

#[cfg(test)]
mod tests {
    use super::super::shape::tests::cuboid;
    use super::*;
    use crate::geometry::{Bounds2, Vector3};

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
    fn the_hidden_pieces_are_the_rest_of_the_edges() {
        // As above: the near box hides 10 of each of the far box's two long front edges. Its far side's four edges lie
        // behind the front's, 76 long together; its edges along the line of sight are points.
        let (far, near) = (
            Shape::new(&cuboid(30.0, 8.0, 5.0)),
            Shape::new(&cuboid(10.0, 20.0, 5.0)),
        );
        let bodies = [(&far, at(0.0, 0.0, 0.0)), (&near, at(10.0, -6.0, 50.0))]
            .map(|(shape, motion)| Placed { shape, motion });
        let lines = with_hidden(&bodies, |of| of == 0);
        let (seen, hidden): (Vec<Line>, Vec<Line>) = lines.iter().partition(|l| l.seen);
        assert_eq!(seen, visible(&bodies));
        assert!(hidden.iter().all(|l| l.of == 0));
        assert!(
            (total(&hidden) - (20.0 + 76.0)).abs() < 1e-2,
            "{}",
            total(&hidden)
        );
    }

    #[test]
    fn the_nearest_surface_is_found_at_each_point() {
        let shape = Shape::new(&cuboid(30.0, 20.0, 10.0));
        let bodies = [at(0.0, 0.0, 0.0), at(20.0, 0.0, 50.0)].map(|motion| Placed {
            shape: &shape,
            motion,
        });
        let depths = Depths::new(&bodies);
        let found = [5.0, 25.0, 45.0, 55.0].map(|x| depths.at(Point2::new(x, 10.0)));
        assert_eq!(found, [Some(10.0), Some(60.0), Some(60.0), None]);
    }

    #[test]
    fn the_work_is_counted() {
        let shape = Shape::new(&cuboid(30.0, 20.0, 10.0));
        let bodies = [at(0.0, 0.0, 0.0), at(0.0, 0.0, 50.0)].map(|motion| Placed {
            shape: &shape,
            motion,
        });
        // Each box turns one side to the eye: two triangles; all four are in one leaf. The four edges of the farther
        // one look into the leaf and at its triangles; for those of the nearer one nothing in it is near enough.
        let Effort {
            triangles,
            edges,
            steps,
        } = effort(&bodies);
        assert_eq!((triangles, edges), (4, 8));
        assert_eq!(steps, 4 * (1 + 4) + 4);
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
