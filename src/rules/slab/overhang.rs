//! An overhang as a strip that sticks out: how far, what loads it, and what holds it.

use super::concrete::{FACTORS, Steel, WEIGHT, modulus, modulus_of_rupture, plain_bending};
use crate::design::{Placed, Side};
use crate::diagnostics::Place;
use crate::plan::{CounterSide, SideKind};
use crate::rules::{Answers, Limit, Subject};
use crate::units::{Length, POUND_FORCE, Stress, Unit};

/// Somebody who sits or leans on the edge.
pub(super) const EDGE_LOAD: Limit = Limit {
    name: "edge-load",
    what: "the load of a person on the edge of the counter",
    usual: 300.0 * POUND_FORCE,
    unit: Unit::Force,
    source: "common practice, 200 to 300 lb; a stair tread bears 300 lb by IRC 2015, Table R301.5",
};

/// The width of edge that a person takes up.
pub(super) const EDGE_WIDTH: Limit = Limit {
    name: "edge-load-width",
    what: "the width of edge over which a person's load is taken",
    usual: 304.8,
    unit: Unit::Length,
    source: "common practice",
};

/// The yield strength of mesh and bars.
pub(super) const YIELD: Limit = Limit {
    name: "steel-yield",
    what: "yield strength of mesh and bars",
    usual: 413.685_437_59,
    unit: Unit::Stress,
    source: "60 ksi, ASTM A615 grade 60, value from memory",
};

/// One exposed side of the counter that passes what it rests on.
#[derive(Clone, Debug)]
pub(super) struct Overhang<'a> {
    /// Its name, such as `bar run, seating side`.
    pub name: &'a str,
    /// The side of its run.
    pub side: Side,
    /// The overhang past the finished face as the file gives it.
    pub given: &'a Placed<Length>,
    /// From the steel to the edge, or where brackets stand, from their end to the edge, mm.
    pub free: f64,
    /// From the steel to the edge, mm.
    pub whole: f64,
    /// Length of the side, mm.
    pub length: f64,
    /// Depth and width of the turndown at its edge, mm.
    pub rim: (f64, f64),
}

/// Every exposed side that passes its finished face, the longest stretch of each face.
pub(super) fn overhangs<'a>(subject: &Subject<'a>) -> Vec<Overhang<'a>> {
    let plan = subject.plan;
    let mut found: Vec<Overhang> = Vec::new();
    for side in &plan.counter.sides {
        if side.kind != SideKind::Exposed || side.overhang <= 0.0 {
            continue;
        }
        let face = &plan.faces[side.face];
        let one = overhang(subject, side);
        match found.iter_mut().find(|o| o.name == face.name) {
            Some(known) if known.length < one.length => *known = one,
            Some(_) => {}
            None => found.push(one),
        }
    }
    found
}

/// The overhangs, or the answer that there is none.
pub(super) fn or_say_none<'a>(subject: &Subject<'a>, answers: &mut Answers) -> Vec<Overhang<'a>> {
    let found = overhangs(subject);
    if found.is_empty() {
        answers.nothing("the counter passes the finished face nowhere");
    }
    found
}

/// The overhangs with the strength of their concrete, or the answer why they cannot be reckoned.
pub(super) fn with_strength<'a>(
    subject: &Subject<'a>,
    answers: &mut Answers,
) -> Option<(Vec<Overhang<'a>>, Stress)> {
    let found = or_say_none(subject, answers);
    if found.is_empty() {
        return None;
    }
    let strength = subject.design().counter.casting.strength.as_ref();
    if strength.is_none() {
        answers.missing(&counter(), "strength", "how strong the concrete is");
    }
    Some((found, strength?.value))
}

/// The group of the counter's keys.
pub(super) fn counter() -> Place {
    Place {
        key: "counter".to_owned(),
        ..Place::default()
    }
}

fn overhang<'a>(subject: &Subject<'a>, side: &CounterSide) -> Overhang<'a> {
    let (plan, design) = (subject.plan, subject.design());
    let face = &plan.faces[side.face];
    let whole = side.overhang + design.trade.cladding().mm();
    let brackets = design.counter.casting.brackets.as_ref();
    let reach = brackets.filter(|_| face.side == Side::Seating);
    let held = reach.map_or(0.0, |b| b.reach.mm() + design.trade.cladding().mm());
    let rim = if side.dropped {
        (plan.counter.turndown_depth, plan.counter.turndown_width)
    } else {
        (0.0, 0.0)
    };
    Overhang {
        name: &face.name,
        side: face.side,
        given: design.counter.overhang.of(face.side),
        free: (whole - held).max(0.0),
        whole,
        length: side.length(),
        rim,
    }
}

/// What acts at the root of a strip that sticks out `arm` millimetres, for each millimetre of width.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Action {
    /// Moment of its own weight, N.
    pub dead: f64,
    /// Moment of the person at its edge, N.
    pub live: f64,
    /// Shear of its own weight, N/mm.
    pub dead_shear: f64,
    /// Shear of the person, N/mm.
    pub live_shear: f64,
}

impl Action {
    /// Factored moment, N.
    pub(super) fn factored(self) -> f64 {
        FACTORS.0 * self.dead + FACTORS.1 * self.live
    }

    /// Factored shear, N/mm.
    pub(super) fn factored_shear(self) -> f64 {
        FACTORS.0 * self.dead_shear + FACTORS.1 * self.live_shear
    }
}

impl Overhang<'_> {
    /// What acts at the root of the free length. A person's load spreads at 45 degrees to either side on its way to the root; the
    /// width it has half way counts.
    pub(super) fn action(&self, subject: &Subject) -> Action {
        let (arm, thickness) = (self.free, subject.design().counter.thickness.mm());
        let (load, width) = (
            subject.bound(&EDGE_LOAD).value,
            subject.bound(&EDGE_WIDTH).value,
        );
        let (drop, across) = self.rim;
        let rim = WEIGHT * drop * across.min(arm);
        let spread = (width + arm).max(1.0);
        Action {
            dead: WEIGHT * thickness * arm * arm / 2.0 + rim * (arm - across.min(arm) / 2.0),
            live: load * arm / spread,
            dead_shear: WEIGHT * thickness * arm + rim,
            live_shear: load / spread,
        }
    }
}

/// What would hold an overhang: its concrete, its steel.
pub(super) fn holds(subject: &Subject, strength: Stress) -> Strength {
    let thickness = subject.design().counter.thickness.mm();
    let steel = steel(subject).map(|s| s.moment(strength, subject.bound(&YIELD).value));
    Strength {
        cracks: modulus_of_rupture(strength) * modulus(thickness),
        plain: plain_bending(strength) * modulus(thickness),
        steel: steel.fold(0.0, f64::max),
    }
}

/// The bars that are usual where the file names none: 3/8 in, else 1/4 in, and 3/4 in below the top, common practice.
const USUAL_BARS: [f64; 2] = [9.525, 6.35];
const USUAL_COVER: f64 = 19.05;

/// Diameter and spacing of bars near the top that bear a factored moment, mm: as wide apart as whole inches allow, at most
/// three times the thickness (ACI 318-19, 7.7.2.3, value from memory) and a foot. `None` where no spacing down to 2 in does.
pub(super) fn bars_needed(
    subject: &Subject,
    strength: Stress,
    factored: f64,
) -> Option<(f64, f64)> {
    let counter = &subject.design().counter;
    let (r, thickness) = (&counter.casting.reinforcement, counter.thickness.mm());
    let sizes = r.bars.as_ref().map_or(USUAL_BARS, |b| [b.mm(); 2]);
    let cover = r.cover.as_ref().map_or(USUAL_COVER, |c| c.mm());
    let fy = subject.bound(&YIELD).value;
    let bears = |size: f64, inches: u32| {
        let [size, apart, cover] = [size, f64::from(inches) * 25.4, cover].map(Length::millimetres);
        Steel::round(size, apart, cover, thickness).moment(strength, fy) >= factored
    };
    let widest = (3.0 * thickness / 25.4 + 1e-9).floor().clamp(2.0, 12.0) as u32;
    sizes.into_iter().find_map(|size| {
        let inches = (2..=widest).rev().find(|i| bears(size, *i))?;
        Some((size, f64::from(inches) * 25.4))
    })
}

/// Moments that a strip bears, N·mm for each millimetre.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Strength {
    /// At which plain concrete cracks, without any safety.
    pub cracks: f64,
    /// By the design strength of plain concrete.
    pub plain: f64,
    /// By mesh or bars near the pulled face; nothing without.
    pub steel: f64,
}

/// True where there is mesh or are bars of which the file does not say how deep they lie.
pub(super) fn steel_without_cover(subject: &Subject) -> bool {
    let r = &subject.design().counter.casting.reinforcement;
    r.cover.is_none() && (r.mesh.is_some() || r.bars.is_some())
}

/// Bars, and mesh, as they lie for an overhang.
fn steel(subject: &Subject) -> impl Iterator<Item = Steel> {
    let counter = &subject.design().counter;
    let (r, thickness) = (&counter.casting.reinforcement, counter.thickness.mm());
    let cover = r.cover.as_ref().map(|c| c.value);
    let layer = move |size: Option<&Placed<Length>>, apart: Option<&Placed<Length>>| {
        Some(Steel::round(size?.value, apart?.value, cover?, thickness))
    };
    let bars = layer(r.bars.as_ref(), r.bar_spacing.as_ref());
    let mesh = layer(r.mesh.as_ref(), r.mesh_spacing.as_ref());
    bars.into_iter().chain(mesh)
}
