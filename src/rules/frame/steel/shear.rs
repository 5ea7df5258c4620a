//! The strength of a web in shear (AISI S100-16 G2.1, and G3 beside punch-outs; from memory).

use super::buckling::plate_stress;
use super::properties::{Flats, Punched};
use super::steel_grade::Grade;
use crate::catalog::SteelSection;

const SAFETY: f64 = 1.60;
/// Buckling coefficient of a web in shear without stiffeners.
const SHEAR_K: f64 = 5.34;

/// The shear that a web may carry, N.
pub fn web_shear(section: &SteelSection, punched: Punched, grade: Grade) -> f64 {
    let flats = Flats::of(section);
    let (h, t) = (flats.web, flats.t);
    let whole = 0.6 * grade.fy * h * t;
    let elastic = plate_stress(SHEAR_K, h, t) * h * t;
    let slenderness = (whole / elastic).sqrt();
    let nominal = match slenderness {
        l if l <= 0.815 => whole,
        l if l <= 1.227 => 0.815 * (elastic * whole).sqrt(),
        _ => elastic,
    };
    let beside = punched
        .hole(section)
        .map_or(1.0, |hole| ((h - hole) / 2.0 / (54.0 * t)).clamp(0.0, 1.0));
    nominal * beside / SAFETY
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_web_agrees_with_the_table_of_shears() {
        // Industry load tables (value from memory): 362S162-33, 33 ksi: allowable shear 1,024 lb without holes.
        let s = SteelSection::from_designator("362S162-33").unwrap();
        let lb = |p| web_shear(&s, p, Grade::STRUCTURAL_33) / 4.448_221_615;
        assert!(
            (lb(Punched::No) / 1024.0 - 1.0).abs() < 0.03,
            "{}",
            lb(Punched::No)
        );
        assert!(lb(Punched::Yes) < lb(Punched::No));
    }
}
