//! The check that a surface of triangles closes round a solid.

use super::{Faceted, Point3, Solid, Vector3};

/// Points nearer than this are one point; a triangle lower than a hundredth of it is none, millimetres.
const NEAR: f64 = 1e-4;

/// What is wrong with a surface of triangles.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Unsound {
    /// There is no triangle.
    Empty,
    /// A coordinate is infinite or not a number.
    NotFinite,
    /// A triangle names a corner that does not exist.
    NoSuchCorner,
    /// A corner belongs to no triangle.
    Unused(Point3),
    /// Two corners stand in one place.
    Twice(Point3),
    /// A triangle has no area to speak of.
    Sliver(Point3),
    /// The triangles on the two sides of an edge do not fit: one is missing, or there are more, or they face apart.
    Open(Point3, Point3),
    /// The surface encloses nothing, or faces inwards.
    InsideOut,
    /// It encloses another volume than the solid has, mm³.
    Volume {
        /// What it encloses.
        found: f64,
        /// What the solid has.
        exact: f64,
    },
    /// It reaches farther than the solid, or less far than the tolerance allows.
    Reach,
}

impl std::fmt::Display for Unsound {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let at = |p: &Point3| format!("({:.3}, {:.3}, {:.3})", p.x, p.y, p.z);
        match self {
            Self::Empty => write!(f, "its description gives no surface"),
            Self::NotFinite => write!(f, "a coordinate is not a number"),
            Self::NoSuchCorner => write!(f, "a triangle names a corner that does not exist"),
            Self::Unused(p) => write!(f, "no triangle uses the corner at {}", at(p)),
            Self::Twice(p) => write!(f, "two corners stand at {}", at(p)),
            Self::Sliver(p) => write!(f, "a triangle at {} has no area", at(p)),
            Self::Open(p, q) => write!(f, "the surface is open from {} to {}", at(p), at(q)),
            Self::InsideOut => write!(f, "the surface encloses nothing"),
            Self::Volume { found, exact } => {
                write!(f, "the surface encloses {found:.1} mm³ of {exact:.1} mm³")
            }
            Self::Reach => write!(f, "the surface does not reach as far as the solid"),
        }
    }
}

impl std::error::Error for Unsound {}

impl Faceted {
    /// Checks the promise of [`Faceted`]: finite, closed, consistent, facing outwards, without slivers and double
    /// points.
    ///
    /// # Errors
    /// The first fault found.
    pub fn check(&self) -> Result<(), Unsound> {
        if self.triangles.is_empty() {
            return Err(Unsound::Empty);
        }
        if !self
            .points
            .iter()
            .all(|p| p.coords.iter().all(|c| c.is_finite()))
        {
            return Err(Unsound::NotFinite);
        }
        self.check_corners()?;
        self.check_edges()?;
        self.check_slivers()?;
        if self.volume() > 0.0 {
            Ok(())
        } else {
            Err(Unsound::InsideOut)
        }
    }

    /// Checks that a surface is sound and is the surface of a solid, its curves within `tolerance`.
    ///
    /// The volume may be off by the tolerance over the curved surfaces, no more.
    ///
    /// # Errors
    /// The first fault found.
    pub fn check_against(&self, solid: &Solid, tolerance: f64) -> Result<(), Unsound> {
        self.check()?;
        let (found, exact) = (self.volume(), solid.volume());
        let slack = tolerance * self.curved_area() + 1e-9 * exact.abs();
        let off = (found - exact).abs();
        if off.is_nan() || off > slack {
            return Err(Unsound::Volume { found, exact });
        }
        let (mesh, box_) = (self.bounds().ok_or(Unsound::Empty)?, solid.bounds());
        let shy = [mesh.low - box_.low, box_.high - mesh.high];
        let fits = |d: &f64| *d > -1e-6 && *d < tolerance + 1e-6;
        if shy.iter().flat_map(|v| v.iter()).all(fits) {
            Ok(())
        } else {
            Err(Unsound::Reach)
        }
    }

    /// The area of the surfaces that are not plane, mm².
    fn curved_area(&self) -> f64 {
        let surfaces = self
            .triangles
            .iter()
            .map(|t| t.surface as usize + 1)
            .max()
            .unwrap_or(0);
        let mut areas = vec![(None::<Vector3>, false, 0.0); surfaces];
        for t in &self.triangles {
            let [a, b, c] = self.corners(t);
            let cross = (b - a).cross(&(c - a));
            let (first, curved, area) = &mut areas[t.surface as usize];
            let normal = cross.normalize();
            *curved |= (first.get_or_insert(normal).dot(&normal) - 1.0).abs() > 1e-9;
            *area += cross.norm() / 2.0;
        }
        areas.iter().filter(|a| a.1).map(|a| a.2).sum()
    }

    fn check_corners(&self) -> Result<(), Unsound> {
        let mut used = vec![false; self.points.len()];
        for corner in self.triangles.iter().flat_map(|t| t.corners) {
            *used.get_mut(corner as usize).ok_or(Unsound::NoSuchCorner)? = true;
        }
        if let Some((p, _)) = self.points.iter().zip(used).find(|(_, used)| !used) {
            return Err(Unsound::Unused(*p));
        }
        let cell = |p: &Point3| [p.x, p.y, p.z].map(|c| (c / NEAR).round() as i64);
        let mut cells: Vec<_> = self.points.iter().map(|p| (cell(p), p)).collect();
        cells.sort_unstable_by_key(|c| c.0);
        match cells.windows(2).find(|w| w[0].0 == w[1].0) {
            Some(w) => Err(Unsound::Twice(*w[0].1)),
            None => Ok(()),
        }
    }

    fn check_edges(&self) -> Result<(), Unsound> {
        let mut edges: Vec<(u32, u32)> = Vec::with_capacity(3 * self.triangles.len());
        for t in &self.triangles {
            let [a, b, c] = t.corners;
            edges.extend([(a, b), (b, c), (c, a)]);
        }
        let mut back: Vec<_> = edges.iter().map(|e| (e.1, e.0)).collect();
        edges.sort_unstable();
        back.sort_unstable();
        let at = |i: u32| self.points[i as usize];
        let doubled = edges.windows(2).find(|w| w[0] == w[1]).map(|w| w[0]);
        let lonely = edges
            .iter()
            .zip(&back)
            .find(|(e, b)| e != b)
            .map(|(e, b)| *e.min(b));
        match doubled.or(lonely) {
            Some((a, b)) => Err(Unsound::Open(at(a), at(b))),
            None => Ok(()),
        }
    }

    fn check_slivers(&self) -> Result<(), Unsound> {
        for t in &self.triangles {
            let [a, b, c] = t.corners.map(|i| self.points[i as usize]);
            let longest = (b - a).norm().max((c - b).norm()).max((a - c).norm());
            let shortest = (b - a).norm().min((c - b).norm()).min((a - c).norm());
            let height = (b - a).cross(&(c - a)).norm() / longest;
            // Written so that a height that is not a number fails too.
            if !(height > NEAR / 100.0 && shortest > NEAR) {
                return Err(Unsound::Sliver(a));
            }
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::{Solid, Triangle};

    fn cube() -> Faceted {
        Solid::cuboid(10.0, 20.0, 30.0).faceted(0.1)
    }

    #[test]
    fn a_cuboid_is_sound() {
        assert_eq!(cube().check(), Ok(()));
        assert_eq!(cube().triangles.len(), 12);
        assert!((cube().volume() - 6000.0).abs() < 1e-9);
    }

    #[test]
    fn every_fault_is_seen() {
        let broken = |change: fn(&mut Faceted)| {
            let mut f = cube();
            change(&mut f);
            f.check().unwrap_err()
        };
        assert_eq!(broken(|f| f.triangles.clear()), Unsound::Empty);
        assert_eq!(broken(|f| f.points[0].x = f64::NAN), Unsound::NotFinite);
        assert_eq!(
            broken(|f| f.triangles[0].corners[0] = 99),
            Unsound::NoSuchCorner
        );
        assert!(matches!(
            broken(|f| f.points.push(Point3::new(1.0, 2.0, 3.0))),
            Unsound::Unused(_)
        ));
        assert!(matches!(
            broken(|f| f.points[1] = f.points[0]),
            Unsound::Twice(_)
        ));
        assert!(matches!(
            broken(|f| f.triangles.truncate(11)),
            Unsound::Open(..)
        ));
        let turned = |f: &mut Faceted| f.triangles[0].corners.swap(0, 1);
        assert!(matches!(broken(turned), Unsound::Open(..)));
        let all_turned =
            |f: &mut Faceted| f.triangles.iter_mut().for_each(|t| t.corners.swap(0, 1));
        assert_eq!(broken(all_turned), Unsound::InsideOut);
        let doubled = |f: &mut Faceted| {
            let t: Vec<Triangle> = f.triangles.clone();
            f.triangles.extend(t);
        };
        assert!(matches!(broken(doubled), Unsound::Open(..)));
    }

    #[test]
    fn a_flat_triangle_is_seen() {
        // A tetrahedron whose fourth corner lies on an edge of the base.
        let points = [
            [0.0, 0.0, 0.0],
            [10.0, 0.0, 0.0],
            [0.0, 10.0, 0.0],
            [5.0, 0.0, 0.0],
        ];
        let corners = [[0, 2, 1], [0, 1, 3], [1, 2, 3], [2, 0, 3]];
        let flat = Faceted {
            points: points.map(Point3::from).to_vec(),
            triangles: corners
                .map(|corners| Triangle {
                    corners,
                    surface: 0,
                })
                .to_vec(),
        };
        assert!(matches!(flat.check(), Err(Unsound::Sliver(_))));
    }
}
