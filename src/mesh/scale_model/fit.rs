//! Whether a print fits the bed.

use crate::design::Printer;
use crate::geometry::Vector3;

/// The room of the printer, millimetres.
#[derive(Clone, Copy, Debug)]
pub(super) struct Room {
    pub(super) x: f64,
    pub(super) y: f64,
    pub(super) z: f64,
}

/// Rounding to the grid may add this much, millimetres.
const SLACK: f64 = 1e-9;

impl Room {
    pub(super) fn of(printer: &Printer) -> Self {
        let [x, y, z] = [0, 1, 2].map(|i| printer.bed[i].mm());
        Self { x, y, z }
    }

    /// True when a box of this size fits, turned by a quarter or not.
    pub(super) fn holds(&self, size: &Vector3) -> bool {
        size.z <= self.z + SLACK && (self.holds_flat(size.x, size.y) || self.is_turned(size))
    }

    fn holds_flat(&self, x: f64, y: f64) -> bool {
        x <= self.x + SLACK && y <= self.y + SLACK
    }

    /// True when a box fits only turned by a quarter.
    pub(super) fn is_turned(&self, size: &Vector3) -> bool {
        !self.holds_flat(size.x, size.y) && self.holds_flat(size.y, size.x)
    }

    /// The longer side of the bed.
    pub(super) fn long(&self) -> f64 {
        self.x.max(self.y)
    }

    /// The shorter side of the bed.
    pub(super) fn short(&self) -> f64 {
        self.x.min(self.y)
    }
}
