//! Faces sewn together edge by edge.

use super::sides::{Frame, Lay};
use super::{Along, Axes, Boundary, Curve, Edge, Face, Surface};
use crate::geometry::{Point3, Segment, Vector3};

/// A boundary in the making.
#[derive(Default)]
pub(super) struct Sewing {
    boundary: Boundary,
}

/// The sides of an outline laid in space, in order.
#[derive(Clone, Debug)]
pub(super) struct Ring {
    pub corners: Vec<usize>,
    pub sides: Vec<Along>,
}

impl Ring {
    /// The bound that runs along it.
    pub fn bound(&self) -> Vec<Along> {
        self.sides.clone()
    }

    /// The bound that runs along it the other way.
    pub fn back(&self) -> Vec<Along> {
        back(&self.sides)
    }
}

/// A row of edges the other way.
pub(super) fn back(row: &[Along]) -> Vec<Along> {
    row.iter().rev().map(|a| a.back()).collect()
}

impl Sewing {
    /// A new corner.
    pub fn point(&mut self, at: Point3) -> usize {
        self.boundary.points.push(at);
        self.boundary.points.len() - 1
    }

    /// A new edge.
    pub fn edge(&mut self, ends: [usize; 2], curve: Curve) -> Along {
        self.boundary.edges.push(Edge { ends, curve });
        Along {
            edge: self.boundary.edges.len() - 1,
            forwards: true,
        }
    }

    /// A new straight edge.
    pub fn line(&mut self, from: usize, to: usize) -> Along {
        self.edge([from, to], Curve::Line)
    }

    /// Parts a straight edge at a corner on it: the edge goes up to there, what is left of it is given.
    pub fn cut(&mut self, edge: Along, at: usize) -> Along {
        let to = std::mem::replace(&mut self.boundary.edges[edge.edge].ends[1], at);
        self.line(at, to)
    }

    /// Lays the sides of an outline.
    pub fn ring(&mut self, sides: &[Segment], lay: &Lay) -> Ring {
        let corners: Vec<_> = sides.iter().map(|s| self.point(lay.at(s.from))).collect();
        let n = corners.len();
        let sides = (0..n)
            .map(|i| self.edge([corners[i], corners[(i + 1) % n]], lay.curve(&sides[i])))
            .collect();
        Ring { corners, sides }
    }

    /// Straight edges from each corner of a ring to the same corner of another.
    pub fn risers(&mut self, low: &Ring, high: &Ring) -> Vec<Along> {
        let pairs = low.corners.iter().zip(&high.corners);
        pairs.map(|(l, h)| self.line(*l, *h)).collect()
    }

    /// A new face.
    pub fn face(&mut self, (surface, outward): (Surface, bool), bounds: Vec<Vec<Along>>) {
        self.boundary.faces.push(Face {
            surface,
            outward,
            bounds,
        });
    }

    /// A new plane face with this normal.
    pub fn plane(&mut self, normal: Vector3, bounds: Vec<Vec<Along>>) -> Option<()> {
        let first = *bounds.first()?.first()?;
        let origin = self.boundary.points[self.boundary.ends(first)?[0]];
        let axes = Axes {
            origin,
            z: normal,
            x: square_to(normal),
        };
        self.face((Surface::Plane(axes), true), bounds);
        Some(())
    }

    /// The faces between two rings of the same sides, the second farther along z; `pierced` gives a side holes.
    pub fn sleeve(
        &mut self,
        sides: &[Segment],
        frame: &Frame,
        [low, high]: [&Ring; 2],
        pierced: impl Fn(usize) -> Vec<Vec<Along>>,
    ) {
        let risers = self.risers(low, high);
        let n = sides.len();
        for (i, side) in sides.iter().enumerate() {
            let right = risers[(i + 1) % n];
            let rim = vec![low.sides[i], right, high.sides[i].back(), risers[i].back()];
            let mut bounds = vec![rim];
            bounds.extend(pierced(i));
            self.face(frame.drawn(side), bounds);
        }
    }

    /// What was sewn; `None` unless it is closed.
    pub fn finish(self) -> Option<Boundary> {
        self.boundary.is_closed().then_some(self.boundary)
    }

    /// What was sewn, faces of one plane that touch made one.
    pub fn finish_merged(mut self) -> Option<Boundary> {
        self.boundary.merge_planes()?;
        self.finish()
    }
}

/// A direction square to another.
fn square_to(z: Vector3) -> Vector3 {
    let flat = Vector3::new(-z.y, z.x, 0.0);
    if flat.norm() > 1e-9 {
        flat.normalize()
    } else {
        Vector3::x()
    }
}
