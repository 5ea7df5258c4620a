//! Effective widths of thin flat elements (AISI S100-16 Appendix 1).

use super::buckling::plate_stress;
use super::steel_grade::E;

/// Buckling coefficient of a flat held along both edges, compressed evenly.
pub(super) const STIFFENED_K: f64 = 4.0;

/// Buckling coefficient of a flat with one free edge, compressed evenly.
pub const fn unstiffened_k() -> f64 {
    0.43
}

/// The effective width of a flat `w` × `t` at a stress of `f` (Eq. 1.1-1 to 1.1-4): all of it up to a slenderness of 0.673.
pub fn effective_width(w: f64, t: f64, k: f64, f: f64) -> f64 {
    if w <= 0.0 || f <= 0.0 {
        return w.max(0.0);
    }
    let slenderness = (f / plate_stress(k, w, t)).sqrt();
    if slenderness <= 0.673 {
        w
    } else {
        w * (1.0 - 0.22 / slenderness) / slenderness
    }
}

/// Buckling coefficient of a web in bending: `psi` is the tension over the compression at its ends, both positive
/// (Eq. 1.1.2-2).
pub fn web_gradient_k(psi: f64) -> f64 {
    4.0 + 2.0 * (1.0 + psi).powi(3) + 2.0 * (1.0 + psi)
}

/// Buckling coefficient of a lip whose compression falls towards its free edge to `psi` of that at the flange
/// (Eq. 1.2.2-3).
pub fn lip_k(psi: f64) -> f64 {
    0.578 / (psi.clamp(0.0, 1.0) + 0.34)
}

/// A flange with a simple lip, as far as it is effective.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StiffenedFlange {
    /// Effective width beside the lip.
    pub at_lip: f64,
    /// Effective width beside the web.
    pub at_web: f64,
    /// Share of the lip's own effective width that counts.
    pub lip_share: f64,
    /// Its buckling coefficient.
    pub k: f64,
}

/// The effective width of a flange with a simple lip at right angles (Section 1.3): flat width `w`, lip `lip` outside
/// and `flat_lip` without its bend, stress `f`.
pub fn stiffened_flange(w: f64, t: f64, lip: f64, flat_lip: f64, f: f64) -> StiffenedFlange {
    let s = 1.28 * (E / f.max(1e-9)).sqrt();
    let slender = w / t / s;
    if slender <= 0.328 || w <= 0.0 {
        return StiffenedFlange {
            at_lip: w / 2.0,
            at_web: w / 2.0,
            lip_share: 1.0,
            k: STIFFENED_K,
        };
    }
    let adequate =
        (399.0 * t.powi(4) * (slender - 0.328).powi(3)).min(t.powi(4) * (115.0 * slender + 5.0));
    let share = (flat_lip.powi(3) * t / 12.0 / adequate).min(1.0);
    let n = (0.582 - slender / 4.0).max(1.0 / 3.0);
    let reach = lip / w;
    // Beyond 0.8 the lip is itself the weaker part; the standard stops there, so it counts for nothing.
    let most = match reach {
        r if r <= 0.25 => 3.57,
        r if r <= 0.8 => 4.82 - 5.0 * r,
        _ => 0.0,
    };
    let k = (most * share.powf(n) + unstiffened_k()).min(STIFFENED_K);
    let width = effective_width(w, t, k, f);
    let at_lip = width / 2.0 * share;
    StiffenedFlange {
        at_lip,
        at_web: width - at_lip,
        lip_share: share,
        k,
    }
}

#[cfg(test)]
mod tests {
    use super::super::steel_grade::KSI;
    use super::*;

    #[test]
    fn a_web_agrees_with_the_formula_worked_on_paper() {
        // w/t = 59.05, f = 16.3 ksi, k = 4: Fcr = 4 · 26,663 / 59.05² = 30.59 ksi; λ = .730; ρ = .957.
        let rho = effective_width(59.05, 1.0, 4.0, 16.3 * KSI) / 59.05;
        assert!((rho - 0.957).abs() < 5e-4, "{rho}");
        assert_eq!(effective_width(10.0, 1.0, 4.0, 33.0 * KSI), 10.0);
    }

    #[test]
    fn coefficients_have_their_known_ends() {
        // Even compression 4 (ψ = −1), pure bending 24 (AISI S100, Table B of plates, value from memory).
        assert_eq!(web_gradient_k(1.0), 24.0);
        assert_eq!(web_gradient_k(-1.0), 4.0);
        assert!((lip_k(1.0) - 0.43).abs() < 2e-3);
    }

    #[test]
    fn a_flange_with_a_short_lip_loses_and_a_stocky_one_does_not() {
        let f = 33.0 * KSI;
        let (t, w) = (0.88, 28.0);
        let long = stiffened_flange(w, t, 12.7, 10.0, f);
        let short = stiffened_flange(w, t, 4.76, 2.0, f);
        assert!(short.at_lip + short.at_web < long.at_lip + long.at_web);
        assert!(short.k < long.k && short.k > 0.43);
        let stocky = stiffened_flange(6.0, t, 4.76, 2.0, f);
        assert_eq!(stocky.at_lip + stocky.at_web, 6.0);
    }
}
