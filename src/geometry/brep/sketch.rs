//! Edges and faces from the sides of outlines.

use super::Boundary;
use crate::geometry::{Outline, Segment};
use truck_modeling::{
    BSplineSurface, Curve, Edge, Face, Matrix4, NurbsSurface, Point3, Shell, Surface, Transform,
    Transformed, Vertex, Wire, builder,
};

/// The edges of an outline laid somewhere in space, in order.
pub struct Loop {
    pub edges: Vec<Edge>,
}

/// The sides of an outline, in their order or against it.
pub fn sides(outline: &Outline, forwards: bool) -> Vec<Segment> {
    let mut sides: Vec<_> = outline.segments().collect();
    if !forwards {
        sides.reverse();
        for side in &mut sides {
            *side = Segment {
                from: side.to,
                to: side.from,
                bulge: -side.bulge,
            };
        }
    }
    sides
}

impl Loop {
    /// Lays the sides of an outline, drawn in the xy plane, where an affine matrix puts them.
    pub fn new(sides: &[Segment], lay: &Matrix4) -> Self {
        let flat = |p: crate::geometry::Point2| Point3::new(p.x, p.y, 0.0);
        let vertices: Vec<Vertex> = sides
            .iter()
            .map(|s| builder::vertex(lay.transform_point(flat(s.from))))
            .collect();
        let edges = sides.iter().enumerate().map(|(i, side)| {
            let (front, back) = (&vertices[i], &vertices[(i + 1) % vertices.len()]);
            if side.bulge == 0.0 {
                return builder::line(front, back);
            }
            let ends = [side.from, side.to].map(|p| builder::vertex(flat(p)));
            let arc = builder::circle_arc(&ends[0], &ends[1], flat(side.at(0.5)));
            Edge::new(front, back, arc.oriented_curve().transformed(*lay))
        });
        Self {
            edges: edges.collect(),
        }
    }

    /// The whole loop as a wire.
    pub fn wire(&self) -> Wire {
        self.edges.iter().cloned().collect()
    }

    /// Straight edges from each corner to the same corner of another loop.
    pub fn risers(&self, other: &Self) -> Vec<Edge> {
        let pairs = self.edges.iter().zip(&other.edges);
        pairs
            .map(|(l, h)| builder::line(l.front(), h.front()))
            .collect()
    }
}

/// The face between an edge and the one above it, outwards when the edge runs left to right seen from outside.
///
/// Straight edges give a plane, with holes where asked for; curved ones a ruled surface.
pub fn side_face([low, right, high, left]: [&Edge; 4], holes: &[Wire]) -> Option<Face> {
    let wire: Wire = vec![low.clone(), right.clone(), high.inverse(), left.inverse()].into();
    if [low, right, high, left]
        .iter()
        .all(|e| matches!(e.curve(), Curve::Line(_)))
    {
        let wires: Vec<Wire> = std::iter::once(wire).chain(holes.iter().cloned()).collect();
        return builder::try_attach_plane(&wires).ok();
    }
    let (first, second) = if matches!(low.curve(), Curve::Line(_)) {
        (right, left)
    } else {
        (low, high)
    };
    let lifted = [first, second].map(|e| e.oriented_curve().lift_up());
    let [first, second] = lifted;
    let surface = NurbsSurface::new(BSplineSurface::homotopy(first, second));
    Face::try_new(vec![wire], Surface::NurbsSurface(surface)).ok()
}

/// All faces between two loops, but for sides that `pierced` gives holes.
pub fn side_faces(
    low: &Loop,
    high: &Loop,
    pierced: impl Fn(usize) -> Vec<Wire>,
) -> Option<Vec<Face>> {
    let risers = low.risers(high);
    let n = low.edges.len();
    (0..n)
        .map(|i| {
            side_face(
                [
                    &low.edges[i],
                    &risers[(i + 1) % n],
                    &high.edges[i],
                    &risers[i],
                ],
                &pierced(i),
            )
        })
        .collect()
}

/// A plane face inside wires, the first of them counter-clockwise seen from outside.
pub fn plane(wires: &[Wire]) -> Option<Face> {
    builder::try_attach_plane(wires).ok()
}

/// The solid that faces enclose.
pub fn enclose(faces: Vec<Face>) -> Option<Boundary> {
    let shell: Shell = faces.into();
    Boundary::try_new(vec![shell]).ok()
}
