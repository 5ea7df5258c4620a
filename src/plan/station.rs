//! Where along a run things stand.

use crate::design::Station;

impl Station {
    /// The distance from the start of a line of this length, in millimetres.
    pub fn along(&self, length: f64) -> f64 {
        match self {
            Self::FromLeft(distance) => distance.mm(),
            Self::FromRight(distance) => length - distance.mm(),
        }
    }
}
