//! Distortional buckling of a lipped C in compression: the flange with its lip turns about the web's edge.

use super::steel_grade::{E, G, POISSON};
use crate::catalog::SteelSection;
use std::f64::consts::PI;

/// Elastic distortional buckling.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Distortional {
    /// Stress, MPa.
    pub stress: f64,
    /// Half wavelength, mm.
    pub half_wave: f64,
}

/// The flange and lip alone, along the middle line, about their own centroid and the web's edge.
struct Flange {
    area: f64,
    j: f64,
    ix: f64,
    iy: f64,
    ixy: f64,
    x0: f64,
    y0: f64,
    hx: f64,
}

impl Flange {
    fn of(b: f64, d: f64, t: f64) -> Self {
        let l = b + d;
        Self {
            area: l * t,
            j: l * t.powi(3) / 3.0,
            ix: t * (t * t * b * b + 4.0 * b * d.powi(3) + t * t * b * d + d.powi(4)) / (12.0 * l),
            iy: t * (b.powi(4) + 4.0 * d * b.powi(3)) / (12.0 * l),
            ixy: t * b * b * d * d / (4.0 * l),
            x0: b * b / (2.0 * l),
            y0: -d * d / (2.0 * l),
            hx: -(b * b + 2.0 * d * b) / (2.0 * l),
        }
    }

    /// Bending and warping stiffness about the web's edge, over E.
    fn warping(&self) -> f64 {
        let arm = (self.x0 - self.hx).powi(2);
        self.ix * arm - self.ixy.powi(2) / self.iy * arm
    }

    /// How the stress in the flange lowers its stiffness, over the stress and (π/L)².
    fn geometric(&self) -> f64 {
        let arm = self.x0 - self.hx;
        let lean = self.ixy / self.iy;
        self.area
            * ((arm * lean).powi(2) - 2.0 * self.y0 * arm * lean
                + self.hx.powi(2)
                + self.y0.powi(2))
            + self.ix
            + self.iy
    }
}

/// Elastic distortional buckling of a stud in compression, nothing holding its flanges (AISI S100-16 Appendix 2,
/// 2.3.1.3, from memory); `None` for a track, which has no lip.
pub fn distortional(section: &SteelSection, length: f64) -> Option<Distortional> {
    let t = section.thickness.mm();
    let lip = section.lip.mm() - t / 2.0;
    if section.lip.mm() <= 0.0 || lip <= 0.0 {
        return None;
    }
    let (web, flange) = (
        section.depth.mm() - t,
        Flange::of(section.flange.mm() - t, lip, t),
    );
    let plate = 1.0 - POISSON * POISSON;
    let wave = (6.0 * PI.powi(4) * web * plate / t.powi(3) * flange.warping()).powf(0.25);
    let half_wave = wave.min(length);
    let p = (PI / half_wave).powi(2);
    let stiffness =
        p * p * E * flange.warping() + p * G * flange.j + E * t.powi(3) / (6.0 * web * plate);
    let geometric = p * (flange.geometric() + t * web.powi(3) / 60.0);
    Some(Distortional {
        stress: stiffness / geometric,
        half_wave,
    })
}

#[cfg(test)]
mod tests {
    use super::super::steel_grade::KSI;
    use super::*;
    use crate::units::Length;

    #[test]
    fn the_wave_and_its_stress_agree_with_finite_strips() {
        // design.md, finite strips: 3.5 × 1.25 × 0.5 in, t .0346: 35.24 ksi at 14.8 in. The standard's formula gives the
        // web its full stiffness though it buckles first, so it lies above by up to a sixth.
        let mut section = SteelSection::from_designator("362S125-33").unwrap();
        section.depth = Length::inches(3.5);
        section.lip = Length::inches(0.5);
        let found = distortional(&section, 1000.0).unwrap();
        let ksi = found.stress / KSI;
        assert!((1.0..1.18).contains(&(ksi / 35.24)), "{ksi}");
        let wave = found.half_wave / 25.4;
        assert!((wave / 14.8 - 1.0).abs() < 0.05, "{wave}");
        let track = SteelSection::from_designator("362T125-33").unwrap();
        assert!(distortional(&track, 1000.0).is_none());
    }
}
