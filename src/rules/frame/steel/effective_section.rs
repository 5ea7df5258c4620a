//! A section as far as it is effective: the gross section less the strips that have buckled away.

use super::effective_width::{
    STIFFENED_K, StiffenedFlange, effective_width, lip_k, stiffened_flange, unstiffened_k,
    web_gradient_k,
};
use super::properties::{Flats, Gross, Punched, gross};
use crate::catalog::SteelSection;

/// The effective area of a section compressed evenly at a stress of `f`, mm² (AISI S100-16 E3.1, Appendix 1).
///
/// A web with punch-outs is taken as two strips, each with one free edge, beside the hole (1.1.1, for noncircular holes).
pub fn compressed_area(section: &SteelSection, punched: Punched, f: f64) -> f64 {
    let flats = Flats::of(section);
    let t = flats.t;
    let whole_web = effective_width(flats.web, t, STIFFENED_K, f);
    let web = punched.hole(section).map_or(whole_web, |hole| {
        let strip = ((flats.web - hole) / 2.0).max(0.0);
        (2.0 * effective_width(strip, t, unstiffened_k(), f)).min(whole_web)
    });
    let lost_flange = if section.lip.mm() > 0.0 {
        let lip = effective_width(flats.lip, t, unstiffened_k(), f);
        let flange = stiffened_flange(flats.flange, t, section.lip.mm(), flats.lip, f);
        flats.flange - flange.at_lip - flange.at_web + flats.lip - lip * flange.lip_share
    } else {
        flats.flange - effective_width(flats.flange, t, unstiffened_k(), f)
    };
    gross(section).area - t * (flats.web - web + 2.0 * lost_flange)
}

/// A section bent about its strong axis, as far as it is effective.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bent {
    /// Effective second moment, mm⁴.
    pub inertia: f64,
    /// From the neutral axis to the compressed skin, mm.
    pub compressed: f64,
    /// From the neutral axis to the pulled skin, mm.
    pub pulled: f64,
}

impl Bent {
    /// Effective section modulus of the compressed skin, mm³.
    pub fn modulus(&self) -> f64 {
        self.inertia / self.compressed
    }
}

/// A rectangle that has buckled away: its middle above mid-depth, its height and its width.
#[derive(Clone, Copy)]
struct Lost {
    y: f64,
    high: f64,
    wide: f64,
}

/// The effective section with a stress of `f` in the compressed skin (AISI S100-16 Appendix 1, the neutral axis found
/// by iteration).
///
/// With punch-outs: a hole of less than 0.38 of the web's flat height changes nothing, otherwise the compressed part
/// of the web is the strip with one free edge beside the hole (1.1.3); the hole itself is taken out of the section.
pub fn bent_section(section: &SteelSection, punched: Punched, f: f64) -> Bent {
    let g = gross(section);
    let half = section.depth.mm() / 2.0;
    let mut axis = 0.0;
    let mut bent = Bent {
        inertia: g.ix,
        compressed: half,
        pulled: half,
    };
    for _ in 0..60 {
        let lost = lost_in_bending(section, punched, f, axis);
        let (next, inertia) = remaining(&g, &lost);
        bent = Bent {
            inertia,
            compressed: half - next,
            pulled: half + next,
        };
        if (next - axis).abs() < 1e-9 {
            break;
        }
        axis = next;
    }
    bent
}

/// The new neutral axis above mid-depth, and the second moment about it.
fn remaining(g: &Gross, lost: &[Lost]) -> (f64, f64) {
    let mut area = g.area;
    let mut first = 0.0;
    let mut second = g.ix;
    for l in lost {
        let a = l.high * l.wide;
        area -= a;
        first -= a * l.y;
        second -= a * l.y * l.y + l.wide * l.high.powi(3) / 12.0;
    }
    let axis = first / area;
    (axis, second - area * axis * axis)
}

fn lost_in_bending(section: &SteelSection, punched: Punched, f: f64, axis: f64) -> Vec<Lost> {
    let mut lost = lost_flange(section, f, axis);
    lost.extend(lost_web(section, punched, f, axis));
    lost
}

fn lost_flange(section: &SteelSection, f: f64, axis: f64) -> Vec<Lost> {
    let flats = Flats::of(section);
    let t = flats.t;
    let top = section.depth.mm() / 2.0;
    let flat = |wide: f64| Lost {
        y: top - t / 2.0,
        high: t,
        wide,
    };
    if section.lip.mm() <= 0.0 {
        let width = effective_width(flats.flange, t, unstiffened_k(), f);
        return vec![flat(flats.flange - width)];
    }
    let flange: StiffenedFlange = stiffened_flange(flats.flange, t, section.lip.mm(), flats.lip, f);
    let stress = |y: f64| f * (y - axis) / (top - axis);
    let (start, end) = (top - flats.bend, top - flats.bend - flats.lip);
    let at_start = stress(start).max(0.0);
    let psi = if at_start > 0.0 {
        stress(end) / at_start
    } else {
        0.0
    };
    let lip = effective_width(flats.lip, t, lip_k(psi), at_start) * flange.lip_share;
    let gone = flats.lip - lip;
    vec![
        flat(flats.flange - flange.at_lip - flange.at_web),
        Lost {
            y: end + gone / 2.0,
            high: gone,
            wide: t,
        },
    ]
}

fn lost_web(section: &SteelSection, punched: Punched, f: f64, axis: f64) -> Vec<Lost> {
    let flats = Flats::of(section);
    let t = flats.t;
    let half = section.depth.mm() / 2.0;
    let end = flats.web / 2.0;
    let stress = |y: f64| f * (y - axis) / (half - axis);
    let strip = |from: f64, to: f64| Lost {
        y: f64::midpoint(from, to),
        high: (to - from).max(0.0),
        wide: t,
    };
    let f1 = stress(end);
    if let Some(hole) = punched.hole(section) {
        let beside = (flats.web - hole) / 2.0;
        let out = strip(-hole / 2.0, hole / 2.0);
        if hole < 0.38 * flats.web {
            return vec![out];
        }
        let width = effective_width(beside, t, unstiffened_k(), f1);
        return vec![out, strip(hole / 2.0, end - width)];
    }
    let psi = (-stress(-end) / f1).max(0.0);
    let whole = effective_width(flats.web, t, web_gradient_k(psi), f1);
    let b1 = whole / (3.0 + psi);
    let slender = section.depth.mm() / section.flange.mm() > 4.0;
    let b2 = match (slender, psi > 0.236) {
        (true, _) => whole / (1.0 + psi) - b1,
        (false, true) => whole / 2.0,
        (false, false) => whole - b1,
    };
    vec![strip(axis + b2, end - b1)]
}

#[cfg(test)]
mod tests {
    use super::super::steel_grade::KSI;
    use super::*;

    fn section(designator: &str) -> SteelSection {
        SteelSection::from_designator(designator).unwrap()
    }

    #[test]
    fn the_effective_area_agrees_with_the_published_example() {
        // AISI D100-17, Example III-3 (reference-values.md): 362S162-54 at 16.3 ksi, Ae .414 in² of .422.
        let stud = section("362S162-54");
        let area = compressed_area(&stud, Punched::No, 16.3 * KSI) / 645.16;
        assert!((area - 0.414).abs() < 0.0006, "{area}");
        assert!((gross(&stud).area / 645.16 - 0.422).abs() < 0.0006);
    }

    #[test]
    fn nothing_is_lost_at_a_small_stress_and_more_at_a_greater() {
        for designator in ["362S125-33", "362S162-43", "362T125-33", "600S162-43"] {
            let s = section(designator);
            let g = gross(&s);
            assert!((compressed_area(&s, Punched::No, 0.1) / g.area - 1.0).abs() < 1e-9);
            let gentle = bent_section(&s, Punched::No, 0.1);
            assert!((gentle.inertia / g.ix - 1.0).abs() < 1e-9, "{designator}");
            let mut last = (f64::INFINITY, f64::INFINITY);
            for f in [50.0, 100.0, 150.0, 227.0] {
                let bent = bent_section(&s, Punched::No, f);
                let now = (compressed_area(&s, Punched::No, f), bent.modulus());
                assert!(now.0 <= last.0 && now.1 <= last.1 + 1e-9, "{designator}");
                assert!(bent.compressed >= bent.pulled - 1e-9);
                last = now;
            }
        }
    }

    #[test]
    fn a_hole_never_helps() {
        let s = section("362S125-33");
        for f in [10.0, 100.0, 227.0] {
            let whole = bent_section(&s, Punched::No, f);
            let holed = bent_section(&s, Punched::Yes, f);
            assert!(holed.modulus() < whole.modulus());
            let area = |p| compressed_area(&s, p, f);
            assert!(area(Punched::Yes) < area(Punched::No));
        }
        // A web of 2-1/2 in has none (industry guide).
        let shallow = section("250S125-33");
        let area = |p| compressed_area(&shallow, p, 100.0);
        assert_eq!(area(Punched::Yes), area(Punched::No));
    }
}
