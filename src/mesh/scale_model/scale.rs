//! Which scale the model is made in.

use super::fit::Room;
use crate::geometry::{Bounds3, Vector3};

/// Usual scales of models, largest first: those of rules in inches and in millimetres.
pub(super) const USUAL: [f64; 11] = [
    10.0, 12.0, 16.0, 20.0, 24.0, 25.0, 32.0, 48.0, 50.0, 96.0, 100.0,
];

/// The largest usual scale at which everything fits the bed whole; the smallest one when nothing does.
pub(super) fn largest(wholes: &[Bounds3], room: &Room) -> f64 {
    let fits = |scale: f64| {
        let sizes = wholes.iter().map(|b| (b.high - b.low) / scale);
        sizes.into_iter().all(|s: Vector3| room.holds(&s))
    };
    let found = USUAL.into_iter().find(|s| fits(*s));
    found.unwrap_or(USUAL[USUAL.len() - 1])
}
