//! What weighs on the frame, and the steel that bears it.

use super::steel::Grade;
use crate::catalog::density::{CEMENT_BOARD, CONCRETE_FRESH};
use crate::diagnostics::Verdict;
use crate::rules::{Limit, Subject};
use crate::units::{GRAVITY, Length, PSF, Unit};

/// One pound of force in newtons.
pub(super) const POUND: f64 = 4.448_221_615_260_5;
/// People and what they put down.
pub(super) const PEOPLE: Limit = Limit {
    name: "frame-people",
    what: "load of people and things on the counter, spread evenly",
    usual: 40.0 * PSF,
    unit: Unit::AreaLoad,
    source: "40 psf, as a deck bears by IRC Table R301.5",
};

/// One who stands on the sheet while it is laid, or on the counter.
pub(super) const PERSON: Limit = Limit {
    name: "frame-person",
    what: "one person standing on one member under the counter",
    usual: 200.0 * POUND,
    unit: Unit::Force,
    source: "common practice",
};

/// Yield point.
pub(super) const YIELD: Limit = Limit {
    name: "frame-steel-yield",
    what: "yield point of studs and track",
    usual: 227.527,
    unit: Unit::Stress,
    source: "33 ksi, the lower of the two grades that studs are made of (industry technical guide, 2024)",
};

/// Tensile strength.
pub(super) const TENSILE: Limit = Limit {
    name: "frame-steel-tensile",
    what: "tensile strength of studs and track",
    usual: 310.264,
    unit: Unit::Stress,
    source: "45 ksi, the lower of the two grades that studs are made of (industry technical guide, 2024)",
};

/// How much of what a member may bear is used before it is doubtful.
pub(super) const DOUBTFUL: f64 = 0.9;

/// The steel of the design.
pub(super) fn grade(subject: &Subject) -> Grade {
    Grade {
        fy: subject.bound(&YIELD).value,
        fu: subject.bound(&TENSILE).value,
    }
}

/// Wet concrete and the sheet under it, MPa.
pub(super) fn wet_slab(subject: &Subject) -> f64 {
    let of = |density: f64, thickness: Length| density * GRAVITY * thickness.mm() * 1e-9;
    let design = subject.design();
    // Whatever the sheet is, cement board is among the heavier ones.
    of(CONCRETE_FRESH.kg_per_m3, design.counter.thickness.value)
        + of(
            CEMENT_BOARD.kg_per_m3,
            design.trade.substrate_thickness.value,
        )
}

/// Wet concrete, the sheet and people, MPa. Together they cover the pour with those who make it, and the dry slab with
/// those who use it.
pub(super) fn pressure(subject: &Subject) -> f64 {
    wet_slab(subject) + subject.bound(&PEOPLE).value
}

/// What a foot of turndown weighs, as N/mm; zero without one.
pub(super) fn turndown(subject: &Subject) -> f64 {
    let counter = &subject.plan.counter;
    let area = counter.turndown_depth * counter.turndown_width;
    area * CONCRETE_FRESH.kg_per_m3 * GRAVITY * 1e-9
}

/// What a mass weighs, N.
pub(super) fn weight(kg: f64) -> f64 {
    kg * GRAVITY
}

/// How a member stands that uses so much of what it may bear.
pub(super) fn verdict(used: f64) -> Verdict {
    if used <= DOUBTFUL {
        Verdict::Pass
    } else if used <= 1.0 {
        Verdict::Caution
    } else {
        Verdict::Fail
    }
}
