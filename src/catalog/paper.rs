//! Papers for printing and drawing.

use crate::units::Length;

/// A paper by name, portrait.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum PaperKind {
    /// 210 × 297 mm.
    A4,
    /// 297 × 420 mm.
    A3,
    /// 420 × 594 mm.
    A2,
    /// 594 × 841 mm.
    A1,
    /// 8.5 × 11 in.
    Letter,
    /// 11 × 17 in.
    Tabloid,
    /// 17 × 22 in.
    AnsiC,
    /// 22 × 34 in.
    AnsiD,
    /// 34 × 44 in.
    AnsiE,
    /// 9 × 12 in.
    ArchA,
    /// 12 × 18 in.
    ArchB,
    /// 18 × 24 in.
    ArchC,
    /// 24 × 36 in.
    ArchD,
}

/// A sheet of paper as it lies: width across, height up. A roll is endlessly (infinitely) high.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Paper {
    /// Across.
    pub width: Length,
    /// Up.
    pub height: Length,
}

impl Paper {
    /// A roll of this width: as long as the drawing needs.
    pub fn roll(width: Length) -> Self {
        Self {
            width,
            height: Length::millimetres(f64::INFINITY),
        }
    }

    /// True for a roll.
    pub fn is_roll(self) -> bool {
        !self.height.is_finite()
    }
}

impl PaperKind {
    /// The paper standing upright.
    pub fn portrait(self) -> Paper {
        let (width, height) = match self {
            Self::A4 => (210.0, 297.0),
            Self::A3 => (297.0, 420.0),
            Self::A2 => (420.0, 594.0),
            Self::A1 => (594.0, 841.0),
            Self::Letter => (215.9, 279.4),
            Self::Tabloid => (279.4, 431.8),
            Self::AnsiC => (431.8, 558.8),
            Self::AnsiD => (558.8, 863.6),
            Self::AnsiE => (863.6, 1117.6),
            Self::ArchA => (228.6, 304.8),
            Self::ArchB => (304.8, 457.2),
            Self::ArchC => (457.2, 609.6),
            Self::ArchD => (609.6, 914.4),
        };
        Paper {
            width: Length::millimetres(width),
            height: Length::millimetres(height),
        }
    }

    /// The paper lying on its long side.
    pub fn landscape(self) -> Paper {
        let Paper { width, height } = self.portrait();
        Paper {
            width: height,
            height: width,
        }
    }
}
