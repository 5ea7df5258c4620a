//! An extrusion's faces.

use super::Boundary;
use super::sewing::{Ring, Sewing};
use super::sides::{Frame, Lay, hole_sides, sides};
use crate::geometry::{EndPlane, Extrusion, Point3, Slot, Vector3, WallFrame};

use super::Along;

/// The loops at both ends, the outer one first.
pub(super) struct Ends {
    pub low: Vec<Ring>,
    pub high: Vec<Ring>,
}

/// A slot's mouth in one side of the outer outline.
struct Mouth {
    side: usize,
    bound: Vec<Along>,
}

impl EndPlane {
    /// How the profile lies in the plane.
    fn lay(&self) -> Lay {
        let [sx, sy] = self.slope;
        Lay {
            origin: Point3::new(0.0, 0.0, self.offset),
            x: Vector3::new(1.0, 0.0, sx),
            y: Vector3::new(0.0, 1.0, sy),
        }
    }

    /// Its normal, upwards.
    fn normal(&self) -> Vector3 {
        let [sx, sy] = self.slope;
        Vector3::new(0.0 - sx, 0.0 - sy, 1.0).normalize()
    }
}

/// Directions of a wall: u along it, z up, and out of its outer skin.
fn wall_frame(frame: &WallFrame) -> Frame {
    Frame {
        origin: frame.at(0.0, 0.0, 0.0),
        x: Vector3::new(frame.along.x, frame.along.y, 0.0),
        y: Vector3::z(),
        z: Vector3::new(-frame.inward.x, -frame.inward.y, 0.0),
    }
}

impl Extrusion {
    /// See [`crate::geometry::Solid::boundary`].
    pub fn boundary(&self) -> Option<Boundary> {
        let mut sewing = Sewing::default();
        let ends = self.sleeve(&mut sewing)?;
        let under = ends.low.iter().map(Ring::back).collect();
        sewing.plane(-self.start.normal(), under)?;
        let over = ends.high.iter().map(Ring::bound).collect();
        sewing.plane(self.end.normal(), over)?;
        sewing.finish()
    }

    /// Sews all faces but the two ends.
    pub(super) fn sleeve(&self, sewing: &mut Sewing) -> Option<Ends> {
        let mut outlines = vec![sides(&self.profile.outer, true)];
        outlines.extend(self.profile.holes.iter().map(hole_sides));
        let mut ends = Ends {
            low: Vec::new(),
            high: Vec::new(),
        };
        let mut mouths = Vec::new();
        for slot in &self.slots {
            mouths.extend(self.slot(sewing, slot)?);
        }
        for (i, outline) in outlines.iter().enumerate() {
            let [low, high] = [&self.start, &self.end].map(|end| sewing.ring(outline, &end.lay()));
            sewing.sleeve(outline, &Frame::world(), [&low, &high], |side| {
                let here = mouths.iter().filter(|m| i == 0 && m.side == side);
                here.map(|m| m.bound.clone()).collect()
            });
            ends.low.push(low);
            ends.high.push(high);
        }
        Some(ends)
    }

    /// Sews the inside of a slot; gives its mouths in both skins.
    fn slot(&self, sewing: &mut Sewing, slot: &Slot) -> Option<[Mouth; 2]> {
        let wall = slot.wall.frame(&self.profile)?;
        let frame = wall_frame(&wall);
        let outline = hole_sides(&slot.outline);
        let [inner, outer] =
            [-wall.thickness, 0.0].map(|height| sewing.ring(&outline, &frame.lay(height)));
        sewing.sleeve(&outline, &frame, [&inner, &outer], |_| Vec::new());
        Some([
            Mouth {
                side: slot.wall.outer,
                bound: outer.bound(),
            },
            Mouth {
                side: slot.wall.inner,
                bound: inner.back(),
            },
        ])
    }
}
