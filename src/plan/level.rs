//! The heights that parts share.

use crate::design::Design;

/// Heights above the datum, millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlanLevels {
    /// Underside of the bottom track; boards and coats begin here too.
    pub frame_bottom: f64,
    /// Top of the top track; cladding ends here, the substrate lies on it.
    pub frame_top: f64,
    /// Underside of the slab: top of the substrate.
    pub slab_bottom: f64,
    /// Top of the finished counter.
    pub counter_top: f64,
}

impl PlanLevels {
    /// Works the heights down from the top of the counter.
    pub fn of(design: &Design) -> Self {
        let counter_top = design.levels.counter.mm();
        let slab_bottom = counter_top - design.counter.thickness.mm();
        Self {
            frame_bottom: design.levels.base_gap.mm(),
            frame_top: slab_bottom - design.trade.substrate_thickness.mm(),
            slab_bottom,
            counter_top,
        }
    }
}
