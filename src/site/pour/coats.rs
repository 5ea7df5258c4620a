//! Base and finish coats: what waits for what, and how heat shortens it.

use super::maturity::pace;
use crate::units::Temperature;

/// Something about a coat that takes time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoatStep {
    /// The coat.
    pub of: &'static str,
    /// What it is.
    pub step: &'static str,
    /// Hours at 70 °F.
    pub hours: f64,
    /// True for what sets, and so goes faster in heat; what cures keeps its hours.
    pub sets: bool,
    /// What to see or to do, with the source of the hours.
    pub said: &'static str,
}

/// How long mixed coats can be worked at 70 °F, hours (common practice; the bag says more).
pub(super) const WORKING: f64 = 1.0;

/// The steps in order.
pub const COATS: [CoatStep; 6] = [
    CoatStep {
        of: "base coat",
        step: "use a batch up",
        hours: WORKING,
        sets: true,
        said: "never wet it again once it stiffens (common practice; the bag says more)",
    },
    CoatStep {
        of: "base coat",
        step: "float or scratch",
        hours: 1.5,
        sets: true,
        said: "when it no longer sticks to the float (common practice)",
    },
    CoatStep {
        of: "base coat",
        step: "keep damp until",
        hours: 48.0,
        sets: false,
        said: "fog it at dawn, noon and dusk, oftener in heat; shade it (ASTM C926, 48 h)",
    },
    CoatStep {
        of: "finish coat",
        step: "not before",
        hours: 48.0,
        sets: false,
        said: "after the base coat; 7 days where three coats are laid (ASTM C926)",
    },
    CoatStep {
        of: "finish coat",
        step: "use a batch up",
        hours: WORKING,
        sets: true,
        said: "from wet edge to wet edge, a whole face without a stop (common practice)",
    },
    CoatStep {
        of: "finish coat",
        step: "paint or seal, not before",
        hours: 168.0,
        sets: false,
        said: "kept from hot sun and drying wind for the first days (ASTM C926, 7 d)",
    },
];

impl CoatStep {
    /// Its hours in air of a temperature.
    pub fn hours_at(&self, air: Temperature) -> f64 {
        if self.sets {
            (self.hours / pace(air).max(1e-6)).min(24.0)
        } else {
            self.hours
        }
    }
}
