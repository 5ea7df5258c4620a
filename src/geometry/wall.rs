//! The lie of a sheet wall in its profile.

use super::{Point2, Point3, Region, Vector2, Wall};

/// Where a wall's outer skin stands and which way it faces.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WallFrame {
    /// The start of the outer skin: u = 0.
    pub origin: Point2,
    /// The direction of u.
    pub along: Vector2,
    /// From the outer skin to the inner one.
    pub inward: Vector2,
    /// The length of the outer skin, millimetres.
    pub length: f64,
    /// Between the skins, millimetres.
    pub thickness: f64,
}

impl WallFrame {
    /// The point at u, so deep from the outer skin, at height z.
    pub fn at(&self, u: f64, depth: f64, z: f64) -> Point3 {
        let p = self.origin + self.along * u + self.inward * depth;
        Point3::new(p.x, p.y, z)
    }

    /// u of a point.
    pub fn u(&self, p: &Point2) -> f64 {
        (p - self.origin).dot(&self.along)
    }
}

impl Wall {
    /// The lie of the wall; `None` when the profile has no such straight, parallel, facing sides.
    pub fn frame(&self, profile: &Region) -> Option<WallFrame> {
        let outer = profile.outer.segments().nth(self.outer)?;
        let inner = profile.outer.segments().nth(self.inner)?;
        let along = (outer.to - outer.from).try_normalize(0.0)?;
        let inward = Vector2::new(-along.y, along.x);
        let back = (inner.to - inner.from).try_normalize(0.0)?;
        let frame = WallFrame {
            origin: outer.from,
            along,
            inward,
            length: (outer.to - outer.from).norm(),
            thickness: (inner.from - outer.from).dot(&inward),
        };
        let straight = outer.bulge == 0.0 && inner.bulge == 0.0;
        let facing = back.dot(&along) < -1.0 + 1e-12 && frame.thickness > 0.0;
        (straight && facing).then_some(frame)
    }
}
