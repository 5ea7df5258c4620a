//! How the ground runs before a face of the island.

use super::surface::Surface;
use crate::plan::{Layers, Plan};

/// How far before a face the ground is looked at, millimetres: 2 ft.
const BEFORE: f64 = 609.6;
/// At so many places along a face.
const PLACES: u32 = 9;

/// The ground before a face.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Approach {
    /// Number of the face.
    pub face: usize,
    /// How much the ground falls towards the face, a part of one, on the average along it; negative where it falls away.
    pub against: f64,
    /// True where half of it or more lies beyond the levels.
    pub beyond: bool,
}

/// The ground before every face that does not stand against a wall.
pub(super) fn approaches(plan: &Plan, surface: &Surface) -> Vec<Approach> {
    let out = Layers::of(&plan.design.trade).finish.outer;
    let faces = plan.faces.iter().enumerate().filter(|(_, f)| !f.wall);
    faces
        .map(|(number, face)| {
            let (mut rise, mut beyond) = (0.0, 0);
            for k in 0..PLACES {
                let s = face.length * (f64::from(k) + 0.5) / f64::from(PLACES);
                let [near, far] = [out, out + BEFORE].map(|o| surface.at(face.point(s, o)));
                rise += (far.z - near.z) / BEFORE;
                beyond += u32::from(near.beyond || far.beyond);
            }
            Approach {
                face: number,
                against: rise / f64::from(PLACES),
                beyond: 2 * beyond >= PLACES,
            }
        })
        .collect()
}
