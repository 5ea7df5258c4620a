//! The heights that parts share.

use crate::design::Design;
use crate::diagnostics::Finding;

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

/// The shortest stud that is still framing, common practice: one foot.
const SHORTEST_STUD: f64 = 304.8;

/// Refuses levels that leave no stud, and a sleeper that does not fit under the frame.
pub(super) fn check(design: &Design, levels: &PlanLevels, findings: &mut Vec<Finding>) {
    let notation = design.project.units;
    let spell = |mm: f64| notation.spell_with_unit(crate::units::Length::millimetres(mm));
    let stud = levels.frame_top - levels.frame_bottom - 2.0 * design.trade.track.thickness.mm();
    if stud < SHORTEST_STUD {
        let needed = levels.counter_top + SHORTEST_STUD - stud;
        findings.push(
            Finding::error(
                "plan-levels",
                &design.levels.counter.place,
                format!(
                    "the levels leave {} for a stud; at least {} is needed",
                    spell(stud.max(0.0)),
                    spell(SHORTEST_STUD)
                ),
            )
            .hint(format!(
                "raise the counter to {} or more, or make slab, substrate or base gap less",
                spell(needed)
            )),
        );
    }
    let sleeper = design.trade.sleeper_height.mm();
    if sleeper > levels.frame_bottom + 1e-6 {
        findings.push(
            Finding::error(
                "plan-sleeper",
                &design.trade.sleeper_height.place,
                format!(
                    "a sleeper {} high does not fit in a base gap of {}",
                    spell(sleeper),
                    spell(levels.frame_bottom)
                ),
            )
            .hint(format!("make the base gap {} or more", spell(sleeper))),
        );
    }
}
