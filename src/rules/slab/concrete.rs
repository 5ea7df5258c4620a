//! Concrete as it bends: stresses and strengths of a strip of slab, in newtons, millimetres and megapascals.

use crate::units::{Length, POUND_FORCE, PSI, Stress};
use std::f64::consts::PI;

/// The weight of a volume of concrete, N/mm³: unit weight 150 pcf, published.
pub(super) const WEIGHT: f64 = 150.0 * POUND_FORCE / (304.8 * 304.8 * 304.8);

/// Load factors for dead and live load: 1.2 and 1.6 (ACI 318-19, Table 5.3.1).
pub(super) const FACTORS: (f64, f64) = (1.2, 1.6);

/// The square root of a strength as the code means it: in psi, given back in megapascals.
fn root(strength: Stress) -> f64 {
    (strength.mpa() / PSI).max(0.0).sqrt() * PSI
}

/// The stress at which plain concrete of normal weight cracks in bending: 7.5 √f'c psi (ACI 318-19, 19.2.3.1).
pub(super) fn modulus_of_rupture(strength: Stress) -> f64 {
    7.5 * root(strength)
}

/// The design stress of plain concrete in bending: φ 0.60 of 5 √f'c psi (ACI 318-19, 14.5.2.1a and Table 21.2.1).
pub(super) fn plain_bending(strength: Stress) -> f64 {
    0.60 * 5.0 * root(strength)
}

/// The design stress of plain concrete in one-way shear, over the whole section: φ 0.60 of 4/3 √f'c psi (ACI 318-19,
/// Table 14.5.5.1).
pub(super) fn plain_shear(strength: Stress) -> f64 {
    0.60 * 4.0 / 3.0 * root(strength)
}

/// The section modulus of a strip, mm³ for each millimetre of its width.
pub(super) fn modulus(thickness: f64) -> f64 {
    thickness * thickness / 6.0
}

/// The elastic modulus of mesh and bars: 29,000 ksi (ACI 318-19, 20.2.2.2), in megapascals.
const STEEL_MODULUS: f64 = 29.0e6 * PSI;

/// How much of the pressed depth the even stress block takes: 0.85 up to 4,000 psi, 0.05 less for each 1,000 psi more, at least
/// 0.65 (ACI 318-19, Table 22.2.2.4.3, value from memory).
fn stress_block(strength: Stress) -> f64 {
    (0.85 - 0.05 * (strength.mpa() / PSI - 4000.0) / 1000.0).clamp(0.65, 0.85)
}

/// Steel in a strip: its area for each millimetre of width, and how deep it lies from the face that is pressed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Steel {
    /// mm² for each millimetre of width.
    pub area: f64,
    /// From the pressed face to the middle of the steel, mm.
    pub depth: f64,
}

impl Steel {
    /// Round bars or wires so far apart, with so much concrete to the pulled face.
    pub(super) fn round(diameter: Length, spacing: Length, cover: Length, thickness: f64) -> Self {
        let d = diameter.mm();
        Self {
            area: PI / 4.0 * d * d / spacing.mm().max(1e-9),
            depth: (thickness - cover.mm() - d / 2.0).max(0.0),
        }
    }

    /// The design moment of the strip, N·mm for each millimetre: φ 0.90 of As fy (d - a/2), a = As fy / (0.85 f'c) (ACI
    /// 318-19, 22.2 and Table 21.2.1). Nothing where the steel is so much that the concrete would crush before it stretches by
    /// 0.003 more than it takes to yield (Table 21.2.2).
    pub(super) fn moment(self, strength: Stress, yield_stress: f64) -> f64 {
        let pull = self.area * yield_stress;
        let a = pull / (0.85 * strength.mpa()).max(1e-9);
        let farthest = 0.003 / (0.006 + yield_stress / STEEL_MODULUS) * self.depth;
        let tension_controlled = a / stress_block(strength) <= farthest;
        if tension_controlled {
            0.90 * pull * (self.depth - a / 2.0)
        } else {
            0.0
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn psi(psi: f64) -> Stress {
        Stress::megapascals(psi * PSI)
    }

    #[test]
    fn stresses_of_concrete_are_those_of_the_code() {
        // ACI 318-19, 19.2.3.1: f'c 4,000 psi gives 7.5 × 63.25 = 474 psi; 14.5.2.1a with φ 0.60: 3 × 63.25 = 189.7 psi; shear
        // 0.8 × 63.25 = 50.6 psi.
        let near = |found: f64, paper: f64| (found / PSI / paper - 1.0).abs() < 1e-3;
        assert!(near(modulus_of_rupture(psi(4000.0)), 474.3));
        assert!(near(plain_bending(psi(4000.0)), 189.7));
        assert!(near(plain_shear(psi(4000.0)), 50.6));
        // 150 pcf over 2 in is 25 psf.
        let psf = WEIGHT * 50.8 / (PSI / 144.0);
        assert!((psf - 25.0).abs() < 1e-6);
        // A strip 2 in thick: 4/6 in³ for each inch.
        assert!((modulus(50.8) / 25.4 / 25.4 - 4.0 / 6.0).abs() < 1e-12);
    }

    #[test]
    fn a_reinforced_strip_holds_what_the_formula_gives_by_hand() {
        // A strip 12 in wide, d 6 in, As 0.44 in², f'c 4,000, fy 60,000 psi: a = 26,400 / 40,800 = 0.647 in, Mn = 26,400 ×
        // 5.676 in = 149,855 in·lb, φMn = 134,870 in·lb, 11,239 in·lb for each inch (ACI 318-19, 22.2, by hand).
        let steel = Steel {
            area: 0.44 / 12.0 * 25.4,
            depth: 6.0 * 25.4,
        };
        let moment = steel.moment(psi(4000.0), 60_000.0 * PSI);
        let in_lb_per_in = moment / (PSI * 25.4 * 25.4);
        assert!((in_lb_per_in - 11_239.0).abs() < 5.0, "{in_lb_per_in}");
        // Twenty times the steel would crush the concrete first: it counts for nothing.
        let much = Steel {
            area: steel.area * 20.0,
            ..steel
        };
        assert_eq!(much.moment(psi(4000.0), 60_000.0 * PSI), 0.0);
        // Table 22.2.2.4.3: 0.85, 0.80, 0.65 at 4,000, 5,000 and 8,000 psi; 10,000 psi has no less.
        for (strength, share) in [
            (3000.0, 0.85),
            (4000.0, 0.85),
            (5000.0, 0.80),
            (8000.0, 0.65),
            (10_000.0, 0.65),
        ] {
            assert!(
                (stress_block(psi(strength)) - share).abs() < 1e-9,
                "{strength}"
            );
        }
        let thin = Steel::round(
            Length::inches(0.5),
            Length::inches(4.0),
            Length::inches(9.0),
            50.8,
        );
        assert_eq!((thin.depth, thin.moment(psi(4000.0), 400.0)), (0.0, 0.0));
    }
}
