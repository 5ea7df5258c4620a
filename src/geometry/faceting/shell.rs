//! Triangles put together to a closed surface.

use super::{Ring, triangulate};
use crate::geometry::{Faceted, Point3, Triangle};

/// A surface being built.
///
/// Invariant: its pieces share their corners by number, so that what is put on whole rows of corners fits.
#[derive(Default)]
pub struct Shell {
    faceted: Faceted,
    surfaces: u32,
}

impl Shell {
    /// A new corner; ask once for each place.
    pub fn point(&mut self, point: Point3) -> u32 {
        self.faceted.points.push(point);
        self.faceted.points.len() as u32 - 1
    }

    /// New corners.
    pub fn row(&mut self, points: impl IntoIterator<Item = Point3>) -> Vec<u32> {
        points.into_iter().map(|p| self.point(p)).collect()
    }

    /// The place of a corner.
    pub fn at(&self, id: u32) -> Point3 {
        self.faceted.points[id as usize]
    }

    /// A number for a new surface.
    pub fn surface(&mut self) -> u32 {
        self.surfaces += 1;
        self.surfaces - 1
    }

    /// Puts on one triangle, counter-clockwise seen from outside.
    pub fn triangle(&mut self, corners: [u32; 3], surface: u32) {
        self.faceted.triangles.push(Triangle { corners, surface });
    }

    /// Puts on a strip between two rows of corners, the second above the first as it is seen from outside when the
    /// rows run left to right; `inside_out` turns it.
    pub fn strip(&mut self, low: &[u32], high: &[u32], surface: u32, inside_out: bool) {
        for (l, h) in low.windows(2).zip(high.windows(2)) {
            for [a, b, c] in [[l[0], l[1], h[1]], [l[0], h[1], h[0]]] {
                self.triangle(if inside_out { [a, c, b] } else { [a, b, c] }, surface);
            }
        }
    }

    /// Puts one surface for a side of a ring over rows of corners, each row above the last.
    pub fn side(&mut self, ring: &Ring, side: usize, rows: &[Vec<u32>], inside_out: bool) {
        let surface = self.surface();
        let mut rows = rows.iter().map(|row| ring.along(side, row));
        let Some(mut low) = rows.next() else { return };
        for high in rows {
            self.strip(&low, &high, surface, inside_out);
            low = high;
        }
    }

    /// Puts on triangles found in a plane; `ids` names the corner at each point of the plane.
    pub fn patch(&mut self, triangles: &[[usize; 3]], ids: &[u32], inside_out: bool) {
        let surface = self.surface();
        for t in triangles {
            let [a, b, c] = t.map(|i| ids[i]);
            self.triangle(if inside_out { [a, c, b] } else { [a, b, c] }, surface);
        }
    }

    /// Puts on a plane polygon with holes, as `flat` shows its corners counter-clockwise from outside.
    ///
    /// `None` when it cannot be cut into triangles.
    pub fn polygon(
        &mut self,
        rings: &[Vec<u32>],
        flat: impl Fn(Point3) -> [f64; 2],
        inside_out: bool,
    ) -> Option<()> {
        let ids = rings.concat();
        let points: Vec<_> = ids.iter().map(|id| flat(self.at(*id))).collect();
        let mut holes = Vec::new();
        let mut next = 0;
        for ring in rings {
            next += ring.len();
            holes.push(next);
        }
        holes.pop();
        let triangles = triangulate(&points, &holes)?;
        self.patch(&triangles, &ids, inside_out);
        Some(())
    }

    /// The surface.
    pub fn finish(self) -> Faceted {
        self.faceted
    }
}
