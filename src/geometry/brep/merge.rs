//! Touching faces of one plane made one.

use super::{Along, Boundary, Curve, Face, Surface};
use crate::geometry::{Point3, Vector3};

impl Boundary {
    /// Makes one face of faces of one plane that share an edge; drops the edges between them.
    ///
    /// `None` when what is left of their bounds does not close.
    pub(super) fn merge_planes(&mut self) -> Option<()> {
        let groups = self.coplanar();
        let mut faces = Vec::with_capacity(groups.len());
        for group in groups {
            let first = self.faces.get(*group.first()?)?.clone();
            if group.len() == 1 {
                faces.push(first);
                continue;
            }
            let all: Vec<Along> = group
                .iter()
                .flat_map(|i| self.faces[*i].bounds.iter().flatten().copied())
                .collect();
            let rim = all.iter().filter(|a| !all.contains(&a.back())).copied();
            let bounds = self.chained(rim.collect())?;
            faces.push(Face { bounds, ..first });
        }
        self.faces = faces;
        self.drop_unused();
        Some(())
    }

    /// Faces in groups: those of one plane that hang together by edges.
    fn coplanar(&self) -> Vec<Vec<usize>> {
        let mut owner: Vec<Option<usize>> = vec![None; self.edges.len()];
        let mut groups: Vec<Vec<usize>> = Vec::new();
        let mut group_of = vec![0; self.faces.len()];
        for (i, face) in self.faces.iter().enumerate() {
            group_of[i] = groups.len();
            groups.push(vec![i]);
            for along in face.bounds.iter().flatten() {
                let Some(other) = owner[along.edge].replace(i) else {
                    continue;
                };
                let (mine, its) = (group_of[i], group_of[other]);
                if mine != its && one_plane(face, &self.faces[other]) {
                    let moved = std::mem::take(&mut groups[mine]);
                    for face in &moved {
                        group_of[*face] = its;
                    }
                    groups[its].extend(moved);
                }
            }
        }
        groups.retain(|g| !g.is_empty());
        groups
    }

    /// Edges in bounds, the outer one first.
    fn chained(&self, mut rest: Vec<Along>) -> Option<Vec<Vec<Along>>> {
        let mut bounds: Vec<Vec<Along>> = Vec::new();
        while let Some(start) = rest.pop() {
            let mut bound = vec![start];
            let [first, mut at] = self.ends(start)?;
            while at != first {
                let next = rest
                    .iter()
                    .position(|a| self.ends(*a).is_some_and(|e| e[0] == at))?;
                let along = rest.remove(next);
                at = self.ends(along)?[1];
                bound.push(along);
            }
            bounds.push(bound);
        }
        let size = |bound: &Vec<Along>| self.area(bound).norm();
        bounds.sort_by(|a, b| size(b).total_cmp(&size(a)));
        Some(bounds)
    }

    /// The area inside a bound as a vector square to it, mm².
    pub(super) fn area(&self, bound: &[Along]) -> Vector3 {
        let Some(origin) = self.points.first() else {
            return Vector3::zeros();
        };
        bound
            .iter()
            .filter_map(|a| {
                let part = self.swept(a.edge, *origin)?;
                Some(if a.forwards { part } else { -part })
            })
            .sum()
    }

    /// The area that the spoke from a point sweeps along an edge.
    fn swept(&self, edge: usize, origin: Point3) -> Option<Vector3> {
        let edge = self.edges.get(edge)?;
        let [from, to] = edge.ends.map(|i| self.points.get(i));
        let (from, to) = (from?, to?);
        Some(match edge.curve {
            Curve::Line => (from - origin).cross(&(to - origin)) / 2.0,
            Curve::Oval(oval) => {
                let turn = (oval.angle(*to) - oval.angle(*from)).rem_euclid(std::f64::consts::TAU);
                let bow = oval.first.cross(&oval.second) * turn;
                ((oval.centre - origin).cross(&(to - from)) + bow) / 2.0
            }
        })
    }

    /// Leaves out edges and corners of no face.
    fn drop_unused(&mut self) {
        let all = self.faces.iter().flat_map(|f| f.bounds.iter().flatten());
        let mut used = vec![false; self.edges.len()];
        all.for_each(|a| used[a.edge] = true);
        let edges = renumber(&mut self.edges, &used);
        let bounds = self.faces.iter_mut().flat_map(|f| &mut f.bounds);
        bounds.flatten().for_each(|a| a.edge = edges[a.edge]);
        let mut used = vec![false; self.points.len()];
        let ends = self.edges.iter().flat_map(|e| e.ends);
        ends.for_each(|p| used[p] = true);
        let points = renumber(&mut self.points, &used);
        for edge in &mut self.edges {
            edge.ends = edge.ends.map(|p| points[p]);
        }
    }
}

/// Keeps what is used; gives everything its new number.
fn renumber<T>(things: &mut Vec<T>, used: &[bool]) -> Vec<usize> {
    let mut next = 0;
    let numbers = used
        .iter()
        .map(|u| {
            next += usize::from(*u);
            next - usize::from(*u)
        })
        .collect();
    let mut keep = used.iter();
    things.retain(|_| keep.next().copied().unwrap_or(true));
    numbers
}

/// True when two faces lie on one plane and face the same way.
fn one_plane(a: &Face, b: &Face) -> bool {
    let (Surface::Plane(p), Surface::Plane(q)) = (a.surface, b.surface) else {
        return false;
    };
    let facing = if a.outward == b.outward { 1.0 } else { -1.0 };
    (p.z - q.z * facing).norm() < 1e-9 && (p.origin - q.origin).dot(&p.z).abs() < 1e-9
}
