//! What keeps a panel from leaning: a flat strap across it, or boards screwed to it.

use super::screws::{Screw, shear};
use super::steel_grade::{E, Grade};

/// A flat strap across a panel, pulled only, a group of screws at each end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strap {
    /// Across, mm.
    pub width: f64,
    /// Thickness, mm.
    pub thickness: f64,
    /// How far it runs along the panel, mm.
    pub run: f64,
    /// How far it rises, mm.
    pub rise: f64,
    /// Screws at each end.
    pub screws: u32,
}

impl Strap {
    fn length(&self) -> f64 {
        self.run.hypot(self.rise)
    }

    /// The push along the panel that it may take, N: yield of the strap ÷ 1.67 (AISI S100-16 D2), tearing beside a
    /// screw hole ÷ 2.00 (D3), or its end screws ÷ 3.0 (J4), whichever is least, along the panel.
    pub fn capacity(&self, screw: Screw, framing: f64, grade: Grade) -> f64 {
        let area = self.width * self.thickness;
        let net = (self.width - screw.diameter).max(0.0) * self.thickness;
        let pull = (area * grade.fy / 1.67).min(net * grade.fu / 2.0);
        let held = f64::from(self.screws) * shear(screw, self.thickness, framing, grade);
        pull.min(held) * self.run / self.length().max(1e-9)
    }

    /// Push along the panel over the lean that it causes, N/mm, from the strap's own stretch.
    pub fn stiffness(&self) -> f64 {
        let length = self.length().max(1e-9);
        E * self.width * self.thickness * self.run.powi(2) / length.powi(3)
    }
}

/// A panel with board screwed to its edges.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BoardedWall {
    /// Along the panel, mm.
    pub length: f64,
    /// Its height, mm.
    pub height: f64,
}

/// The push along a boarded panel that its screws hold, N: one screw's load over the spacing at the edges, along the
/// length. A narrow panel counts less, 2·length/height, and one of more than four to one counts nothing (AISI S400-15
/// E1.3, the reduction from memory); the load of one screw is a choice and comes from outside.
pub fn held_by_screws(wall: BoardedWall, one_screw: f64, spacing: f64) -> f64 {
    let slender = wall.height / wall.length.max(1e-9);
    let counts = match slender {
        s if s <= 2.0 => 1.0,
        s if s <= 4.0 => 2.0 / s,
        _ => 0.0,
    };
    one_screw / spacing.max(1e-9) * wall.length * counts
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_strap_agrees_with_statics_worked_on_paper() {
        // 1-1/2 in × 33 mil over 3 by 4: yield 33 ksi × .0519 in² / 1.67 = 1.026 kip; 4 screws #8 hold 4 × 164 = 656
        // lb, which governs; along the panel 3/5: 394 lb. EA·cos²θ/L with L = 50 in: 29,500 × .0519 × .36/50 = 11.02 kip/in.
        let inch = 25.4;
        let t = 0.0346 * inch;
        let strap = Strap {
            width: 1.5 * inch,
            thickness: t,
            run: 30.0 * inch,
            rise: 40.0 * inch,
            screws: 4,
        };
        let lb = strap.capacity(Screw::NO_8, t, Grade::STRUCTURAL_33) / 4.448_221_615;
        assert!((lb - 393.6).abs() < 1.5, "{lb}");
        let stiff = strap.stiffness() * inch / 4_448.221_615;
        assert!((stiff - 11.02).abs() < 0.02, "{stiff}");
    }

    #[test]
    fn narrow_boards_count_less() {
        let held = |length: f64| {
            held_by_screws(
                BoardedWall {
                    length,
                    height: 800.0,
                },
                200.0,
                200.0,
            )
        };
        assert!((held(800.0) - 800.0).abs() < 1e-9);
        assert!((held(400.0) - 400.0).abs() < 1e-9);
        assert!((held(300.0) - 225.0).abs() < 1e-9);
        assert_eq!(held(150.0), 0.0);
    }
}
