//! Whether a boundary is closed and its corners lie where its faces say.

use super::{Along, Boundary};

/// How far a corner may lie from a surface, in shares of the solid's size.
const CLOSE: f64 = 1e-11;

impl Boundary {
    /// True when it encloses something: see the invariant of [`Boundary`].
    pub fn is_closed(&self) -> bool {
        let finite = self.points.iter().all(|p| p.iter().all(|c| c.is_finite()));
        finite
            && !self.faces.is_empty()
            && self.edges_pair()
            && self.bounds_follow()
            && self.corners_fit()
    }

    /// Each edge once forwards, once backwards.
    fn edges_pair(&self) -> bool {
        let mut found = vec![[0_usize; 2]; self.edges.len()];
        for along in self.faces.iter().flat_map(|f| f.bounds.iter().flatten()) {
            match found.get_mut(along.edge) {
                Some(counts) => counts[usize::from(along.forwards)] += 1,
                None => return false,
            }
        }
        found.iter().all(|counts| *counts == [1, 1])
    }

    fn bounds_follow(&self) -> bool {
        let follows = |bound: &Vec<Along>| {
            let n = bound.len();
            n > 1
                && (0..n).all(|i| {
                    let [here, next] = [bound[i], bound[(i + 1) % n]].map(|a| self.ends(a));
                    matches!((here, next), (Some([_, a]), Some([b, _])) if a == b)
                })
        };
        self.faces.iter().flat_map(|f| &f.bounds).all(follows)
    }

    fn corners_fit(&self) -> bool {
        let reach = self
            .points
            .iter()
            .map(|p| p.coords.amax())
            .fold(1.0, f64::max);
        let fits = |corner: usize, face: &super::Face| {
            let point = self.points.get(corner);
            point.is_some_and(|p| face.surface.distance(*p) < CLOSE * reach)
        };
        self.faces.iter().all(|face| {
            let along = face.bounds.iter().flatten();
            along
                .filter_map(|a| self.ends(*a))
                .all(|[from, _]| fits(from, face))
        })
    }
}

#[cfg(test)]
impl Boundary {
    /// True when the bounds of each plane face run counter-clockwise, less their holes, as seen from outside.
    pub(crate) fn faces_out(&self) -> bool {
        self.faces.iter().all(|face| {
            let super::Surface::Plane(axes) = face.surface else {
                return true;
            };
            let area = |bound: &Vec<Along>| self.area(bound).dot(&axes.z);
            let mut areas = face.bounds.iter().map(area);
            let sign = if face.outward { 1.0 } else { -1.0 };
            areas.next().is_some_and(|a| a * sign > 0.0) && areas.all(|a| a * sign < 0.0)
        })
    }

    /// The volume enclosed where all faces are plane, mm³, by the divergence theorem.
    pub(crate) fn plane_volume(&self) -> Option<f64> {
        let from = self.points.first()?;
        let part = |face: &super::Face| -> Option<f64> {
            let super::Surface::Plane(axes) = face.surface else {
                return None;
            };
            let area: crate::geometry::Vector3 = face.bounds.iter().map(|b| self.area(b)).sum();
            Some((axes.origin - from).dot(&area) / 3.0)
        };
        self.faces.iter().map(part).sum()
    }
}
