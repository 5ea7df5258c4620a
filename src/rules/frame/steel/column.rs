//! The strength of a column (AISI S100-16 chapter E).

use super::buckling::{Unbraced, global_stress};
use super::distortional::distortional;
use super::effective_section::compressed_area;
use super::properties::{Punched, gross};
use super::steel_grade::Grade;
use crate::catalog::SteelSection;

/// Allowable strength design: the nominal strength is divided by this (E1).
const SAFETY: f64 = 1.80;

/// The strength of a column and how it came about.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Column {
    /// Stress at which the whole column buckles elastically, MPa.
    pub elastic: f64,
    /// Slenderness.
    pub slenderness: f64,
    /// Nominal stress, MPa.
    pub stress: f64,
    /// Effective area at that stress, mm².
    pub area: f64,
    /// Nominal strength, N: the least of global with local (E3.1) and distortional buckling (E4.1).
    pub nominal: f64,
    /// What it may carry, N.
    pub allowable: f64,
}

/// Slenderness and nominal stress from the elastic stress (Eq. E2-1 to E2-4).
pub fn nominal_stress(elastic: f64, fy: f64) -> (f64, f64) {
    let slenderness = (fy / elastic).sqrt();
    let stress = if slenderness <= 1.5 {
        0.658f64.powf(slenderness * slenderness) * fy
    } else {
        0.877 / (slenderness * slenderness) * fy
    };
    (slenderness, stress)
}

/// The strength of a column loaded through its centroid.
pub fn column_strength(
    section: &SteelSection,
    punched: Punched,
    grade: Grade,
    unbraced: &Unbraced,
) -> Column {
    let g = gross(section);
    let elastic = global_stress(&g, unbraced);
    let (slenderness, stress) = nominal_stress(elastic, grade.fy);
    let area = compressed_area(section, punched, stress);
    let turning = distortional(section, unbraced.twist).map_or(f64::INFINITY, |d| {
        distortional_strength(g.area * grade.fy, g.area * d.stress)
    });
    let nominal = (area * stress).min(turning);
    Column {
        elastic,
        slenderness,
        stress,
        area,
        nominal,
        allowable: nominal / SAFETY,
    }
}

/// Strength against distortional buckling (Eq. E4.1-1 and E4.1-2) from the squash load and the elastic load.
fn distortional_strength(squash: f64, elastic: f64) -> f64 {
    let ratio = elastic / squash;
    if (1.0 / ratio).sqrt() <= 0.561 {
        squash
    } else {
        (1.0 - 0.25 * ratio.powf(0.6)) * ratio.powf(0.6) * squash
    }
}

#[cfg(test)]
mod tests {
    use super::super::steel_grade::KSI;
    use super::*;

    const KIP: f64 = 4_448.221_615;

    #[test]
    fn the_published_column_example_is_met() {
        // AISI D100-17, Example III-3 (reference-values.md): 362S162-54, Fy 50 ksi, Fcre 18.5 ksi: λc 1.64, Fn 16.3
        // ksi, Ae .414 in², Pn 6.75 kip, ÷ 1.80 = 3.75.
        let (slenderness, stress) = nominal_stress(18.5 * KSI, 50.0 * KSI);
        assert!((slenderness - 1.64).abs() < 0.005);
        assert!((stress / KSI - 16.3).abs() < 0.1, "{}", stress / KSI);
        let stud = SteelSection::from_designator("362S162-54").unwrap();
        let area = compressed_area(&stud, Punched::No, stress);
        let nominal = area * stress / KIP;
        assert!((nominal - 6.75).abs() < 0.05, "{nominal}");
        assert!((nominal / SAFETY - 3.75).abs() < 0.03);
    }

    #[test]
    fn the_two_curves_meet() {
        // At λc = 1.5: .658^2.25 = .390 and .877/2.25 = .390.
        let fy = 227.5;
        let (_, inelastic) = nominal_stress(fy / 2.249, fy);
        let (_, elastic) = nominal_stress(fy / 2.251, fy);
        assert!((inelastic / fy - 0.390).abs() < 1e-3 && (elastic / fy - 0.390).abs() < 1e-3);
    }

    #[test]
    fn thicker_and_shorter_columns_are_stronger() {
        let strength = |designator: &str, length: f64| {
            let s = SteelSection::from_designator(designator).unwrap();
            let unbraced = Unbraced::all(length);
            column_strength(&s, Punched::Yes, Grade::STRUCTURAL_33, &unbraced).allowable
        };
        for length in [300.0, 600.0, 800.0, 1100.0, 2400.0] {
            let mut last = 0.0;
            for mils in [18, 27, 30, 33, 43, 54, 68, 97] {
                let name = format!("362S162-{mils}");
                let now = strength(&name, length);
                assert!(now > last, "{name} at {length}");
                assert!(strength(&name, length * 1.05) <= now);
                last = now;
            }
        }
    }
}
