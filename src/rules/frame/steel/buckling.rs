//! Elastic buckling of flat elements and of whole columns.

use super::properties::Gross;
use super::steel_grade::{E, G, POISSON};
use std::f64::consts::PI;

/// The stress at which a flat element buckles: k π²E / (12(1 − μ²)) (t/w)².
pub fn plate_stress(k: f64, w: f64, t: f64) -> f64 {
    k * PI * PI * E / (12.0 * (1.0 - POISSON * POISSON)) * (t / w).powi(2)
}

/// Lengths between points where a member is held, millimetres; each with its factor K counted in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Unbraced {
    /// Against bending about the strong axis.
    pub x: f64,
    /// Against bending about the weak axis.
    pub y: f64,
    /// Against twisting.
    pub twist: f64,
}

impl Unbraced {
    /// Held at both ends only, all ways.
    pub fn all(length: f64) -> Self {
        Self {
            x: length,
            y: length,
            twist: length,
        }
    }
}

/// The stress of flexural buckling over a length.
pub(super) fn flexural(length: f64, radius: f64) -> f64 {
    PI * PI * E / (length / radius).powi(2)
}

/// The stress of torsional buckling over a length (Eq. E2.2-5, from memory).
pub(super) fn torsional(g: &Gross, length: f64) -> f64 {
    (G * g.j + PI * PI * E * g.cw / (length * length)) / (g.area * g.r0().powi(2))
}

/// The lowest stress at which a whole column of one axis of symmetry buckles (AISI S100-16 E2.1 and E2.2).
pub fn global_stress(g: &Gross, unbraced: &Unbraced) -> f64 {
    let sum_terms = (flexural(unbraced.x, g.rx()), torsional(g, unbraced.twist));
    let (x, t) = sum_terms;
    let beta = g.beta();
    let root = ((x + t).powi(2) - 4.0 * beta * x * t).max(0.0).sqrt();
    let torsional_flexural = (x + t - root) / (2.0 * beta);
    torsional_flexural.min(flexural(unbraced.y, g.ry()))
}

#[cfg(test)]
mod tests {
    use super::super::distortional::distortional;
    use super::super::properties::gross;
    use super::super::steel_grade::KSI;
    use super::*;
    use crate::catalog::SteelSection;
    use crate::units::Length;

    #[test]
    fn whole_columns_agree_with_finite_strips() {
        // design.md, finite strips: 3.5 × 1.25 × 0.5 in, t .0346: 41.1, 17.2, 7.17 ksi at 36, 60, 96 in.
        let mut section = SteelSection::from_designator("362S125-33").unwrap();
        section.depth = Length::inches(3.5);
        section.lip = Length::inches(0.5);
        let g = gross(&section);
        // Strips let the section change its shape: at 36 in distortional buckling is the lower of our two.
        let turning = distortional(&section, 1e4).unwrap().stress;
        for (inches, ksi) in [(36.0, 41.1), (60.0, 17.2), (96.0, 7.17)] {
            let whole = global_stress(&g, &Unbraced::all(inches * 25.4));
            let found = whole.min(turning) / KSI;
            assert!((found / ksi - 1.0).abs() < 0.05, "{inches} in: {found}");
        }
    }

    #[test]
    fn a_longer_column_buckles_sooner() {
        let g = gross(&SteelSection::from_designator("362S125-33").unwrap());
        let stress = |l: f64| global_stress(&g, &Unbraced::all(l));
        for l in [300.0, 600.0, 900.0, 2400.0] {
            assert!(stress(l * 1.1) < stress(l));
        }
    }
}
