//! The strength and stiffness of a member in bending about its strong axis (AISI S100-16 chapter F).

use super::buckling::{flexural, torsional};
use super::effective_section::{Bent, bent_section};
use super::properties::{Gross, Punched, gross};
use super::steel_grade::Grade;
use crate::catalog::SteelSection;

/// Allowable strength design: the nominal strength is divided by this (F1).
const SAFETY: f64 = 1.67;

/// How the compressed flange is held.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Braced {
    /// All along, by the sheet screwed to it.
    AllAlong,
    /// At points so far apart, mm.
    Every(f64),
}

/// The nominal stress of the compressed skin: yield, or less where the member may turn over sideways (F2.1).
fn nominal_stress(g: &Gross, fy: f64, braced: Braced) -> f64 {
    let Braced::Every(length) = braced else {
        return fy;
    };
    let both = flexural(length, g.ry()) * torsional(g, length);
    let elastic = g.r0() * g.area / g.sx * both.sqrt();
    if elastic >= 2.78 * fy {
        fy
    } else if elastic > 0.56 * fy {
        (10.0 / 9.0 * fy * (1.0 - 10.0 * fy / (36.0 * elastic))).min(fy)
    } else {
        elastic
    }
}

/// The moment that a member may carry, N·mm: the effective section at its nominal stress, divided by 1.67. The moment is
/// taken as even along the length (Cb = 1).
pub fn bending_strength(
    section: &SteelSection,
    punched: Punched,
    grade: Grade,
    braced: Braced,
) -> f64 {
    let stress = nominal_stress(&gross(section), grade.fy, braced);
    bent_section(section, punched, stress).modulus() * stress / SAFETY
}

/// The effective second moment at a service moment, mm⁴, for deflections.
pub fn service_inertia(section: &SteelSection, punched: Punched, grade: Grade, moment: f64) -> f64 {
    let at = |stress: f64| -> Bent { bent_section(section, punched, stress) };
    let mut low = 0.0;
    let mut high = grade.fy;
    for _ in 0..30 {
        let middle = f64::midpoint(low, high);
        if at(middle).modulus() * middle < moment.abs() {
            low = middle;
        } else {
            high = middle;
        }
    }
    at(high).inertia
}

#[cfg(test)]
mod tests {
    use super::*;

    fn section(designator: &str) -> SteelSection {
        SteelSection::from_designator(designator).unwrap()
    }

    #[test]
    fn a_stocky_section_held_all_along_yields_whole() {
        // 362S162-97: nothing buckles, so M = Fy Sx / 1.67.
        let s = section("362S162-97");
        let moment = bending_strength(&s, Punched::No, Grade::STRUCTURAL_33, Braced::AllAlong);
        let whole = gross(&s).sx * Grade::STRUCTURAL_33.fy / 1.67;
        assert!((moment / whole - 1.0).abs() < 1e-9, "{}", moment / whole);
    }

    #[test]
    fn a_punched_stud_has_the_moment_of_the_load_tables() {
        // Industry load tables, which take studs as punched (value from memory): 362S162-33, Fy 33 ksi, effective
        // modulus .268 in³, allowable moment 5.29 in·kip.
        let s = section("362S162-33");
        let moment = bending_strength(&s, Punched::Yes, Grade::STRUCTURAL_33, Braced::AllAlong);
        let kip_in = moment / (4_448.221_615 * 25.4);
        assert!((kip_in / 5.29 - 1.0).abs() < 0.04, "{kip_in}");
    }

    #[test]
    fn holding_the_flange_less_never_helps() {
        for designator in ["362S125-33", "362T125-33", "600S162-43"] {
            let s = section(designator);
            let moment = |b| bending_strength(&s, Punched::Yes, Grade::STRUCTURAL_33, b);
            let mut last = moment(Braced::AllAlong);
            for length in [200.0, 500.0, 1000.0, 2000.0, 4000.0] {
                let now = moment(Braced::Every(length));
                assert!(now <= last + 1e-6, "{designator} {length}");
                last = now;
            }
        }
    }

    #[test]
    fn thicker_members_are_stronger_and_stiffer() {
        let mut last = (0.0, 0.0);
        for mils in [18, 27, 30, 33, 43, 54, 68, 97] {
            let s = section(&format!("362S125-{mils}"));
            let grade = Grade::STRUCTURAL_33;
            let strength = bending_strength(&s, Punched::Yes, grade, Braced::AllAlong);
            let inertia = service_inertia(&s, Punched::Yes, grade, 100_000.0);
            assert!(strength > last.0 && inertia > last.1, "{mils}");
            last = (strength, inertia);
        }
    }
}
