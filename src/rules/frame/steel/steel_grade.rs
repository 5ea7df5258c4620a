//! What the steel itself is.

/// Modulus of elasticity, MPa: 29,500 ksi (AISI S100-16).
pub const E: f64 = 29_500.0 * KSI;
/// Shear modulus, MPa: 11,300 ksi (AISI S100-16).
pub const G: f64 = 11_300.0 * KSI;
/// Poisson's ratio.
pub const POISSON: f64 = 0.3;
/// One kip a square inch in megapascals.
pub(super) const KSI: f64 = 6.894_757_293_168;

/// Yield point and tensile strength.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Grade {
    /// Yield point, MPa.
    pub fy: f64,
    /// Tensile strength, MPa.
    pub fu: f64,
}

impl Grade {
    /// 33 ksi yield, 45 ksi tensile: what studs of 43 mil and less are rolled of.
    pub const STRUCTURAL_33: Self = Self {
        fy: 33.0 * KSI,
        fu: 45.0 * KSI,
    };
    /// 50 ksi yield, 65 ksi tensile: studs of 54 mil and more.
    pub const STRUCTURAL_50: Self = Self {
        fy: 50.0 * KSI,
        fu: 65.0 * KSI,
    };
}
