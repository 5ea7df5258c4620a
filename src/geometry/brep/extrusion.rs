//! An extrusion's faces.

use super::Boundary;
use super::sketch::{Loop, enclose, plane, side_faces, sides};
use crate::geometry::{EndPlane, Extrusion, Point3, Slot, WallFrame};
use truck_modeling::{Face, Matrix4, Wire};

/// The faces between the ends, and the loops at both ends.
pub struct Sleeve {
    pub faces: Vec<Face>,
    pub low: Vec<Loop>,
    pub high: Vec<Loop>,
}

/// The shear that lifts the xy plane to an end plane.
fn lift(end: &EndPlane) -> Matrix4 {
    let [sx, sy] = end.slope;
    Matrix4::new(
        1.0, 0.0, sx, 0.0, //
        0.0, 1.0, sy, 0.0, //
        0.0, 0.0, 1.0, 0.0, //
        0.0, 0.0, end.offset, 1.0,
    )
}

/// The motion that stands the xy plane up in a wall, so deep from its outer skin.
fn stand(frame: &WallFrame, depth: f64) -> Matrix4 {
    let Point3 { coords: o } = frame.at(0.0, depth, 0.0);
    let (u, n) = (frame.along, frame.inward);
    Matrix4::new(
        u.x, u.y, 0.0, 0.0, //
        0.0, 0.0, 1.0, 0.0, //
        -n.x, -n.y, 0.0, 0.0, //
        o.x, o.y, o.z, 1.0,
    )
}

impl Extrusion {
    /// See [`crate::geometry::Solid::boundary`].
    pub fn boundary(&self) -> Option<Boundary> {
        let Sleeve {
            mut faces,
            low,
            high,
        } = self.sleeve()?;
        let under: Vec<Wire> = low.iter().map(|l| l.wire().inverse()).collect();
        let over: Vec<Wire> = high.iter().map(Loop::wire).collect();
        faces.extend([plane(&under)?, plane(&over)?]);
        enclose(faces)
    }

    /// All faces but the two ends.
    pub(super) fn sleeve(&self) -> Option<Sleeve> {
        let outlines = std::iter::once((&self.profile.outer, true));
        let outlines = outlines.chain(self.profile.holes.iter().map(|h| (h, false)));
        let rings: Vec<_> = outlines.map(|(o, forwards)| sides(o, forwards)).collect();
        let [low, high] = [&self.start, &self.end]
            .map(|end| -> Vec<Loop> { rings.iter().map(|r| Loop::new(r, &lift(end))).collect() });
        let mut faces = Vec::new();
        let mut mouths: Vec<(usize, Wire)> = Vec::new();
        for slot in &self.slots {
            faces.extend(self.slot_faces(slot, &mut mouths)?);
        }
        for (i, (l, h)) in low.iter().zip(&high).enumerate() {
            let pierced = |side: usize| -> Vec<Wire> {
                let here = mouths.iter().filter(|m| i == 0 && m.0 == side);
                here.map(|m| m.1.clone()).collect()
            };
            faces.extend(side_faces(l, h, pierced)?);
        }
        Some(Sleeve { faces, low, high })
    }

    /// The inside of a slot; notes its mouths in both skins.
    fn slot_faces(&self, slot: &Slot, mouths: &mut Vec<(usize, Wire)>) -> Option<Vec<Face>> {
        let frame = slot.wall.frame(&self.profile)?;
        let ring = sides(&slot.outline, true);
        let [outer, inner] = [0.0, frame.thickness].map(|d| Loop::new(&ring, &stand(&frame, d)));
        mouths.push((slot.wall.outer, outer.wire().inverse()));
        mouths.push((slot.wall.inner, inner.wire()));
        side_faces(&outer, &inner, |_| Vec::new())
    }
}
