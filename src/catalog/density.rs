//! What a volume of each material weighs.

use crate::units::{Mass, Notation, Volume};

/// How heavy a material is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Density {
    /// Kilograms a cubic metre.
    pub kg_per_m3: f64,
    /// Where the figure comes from, as it is added to it in a clause; empty where it is published.
    source: &'static str,
}

/// One pound a cubic foot in kilograms a cubic metre: 0.45359237 kg by 0.3048³ m³.
const PCF: f64 = 0.453_592_37 / (0.304_8 * 0.304_8 * 0.304_8);

/// Steel: 490 pcf, published in the industry's technical guide.
pub const STEEL: Density = Density {
    kg_per_m3: 490.0 * PCF,
    source: "",
};

/// Concrete as poured: unit weight 150 pcf, published.
pub const CONCRETE_FRESH: Density = Density {
    kg_per_m3: 150.0 * PCF,
    source: "",
};

/// Concrete when it has dried: 145 pcf, a value from memory.
pub const CONCRETE_DRIED: Density = Density {
    kg_per_m3: 145.0 * PCF,
    source: ", a value from memory",
};

/// Cement board: 3 psf at half an inch, the heavier end of 2.4 to 3 psf, a value from memory.
pub const CEMENT_BOARD: Density = Density {
    kg_per_m3: 72.0 * PCF,
    source: ", a value from memory",
};

/// Base coat and finish coat: 10 psf at seven eighths of an inch, a value from memory.
pub const STUCCO: Density = Density {
    kg_per_m3: 80.0 / 7.0 * 12.0 * PCF,
    source: ", a value from memory",
};

/// Ceramic tile with its bed: a value from memory.
pub const TILE: Density = Density {
    kg_per_m3: 144.0 * PCF,
    source: ", a value from memory",
};

/// Rot-proof sleepers of solid composite, the heaviest that is usual: a value from memory.
pub const SLEEPER: Density = Density {
    kg_per_m3: 62.4 * PCF,
    source: ", a value from memory",
};

impl Density {
    /// The figure with its unit and its source, in words: `145 pcf, a value from memory`.
    pub fn spell(self, notation: Notation) -> String {
        let source = self.source;
        match notation {
            Notation::Imperial => format!("{:.0} pcf{source}", self.kg_per_m3 / PCF),
            Notation::Metric => format!("{:.0} kg/m³{source}", self.kg_per_m3),
        }
    }

    /// What a volume weighs.
    pub fn of(self, volume: Volume) -> Mass {
        Mass::kilograms(volume.mm3() * 1e-9 * self.kg_per_m3)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steel_and_water_weigh_what_the_tables_say() {
        // 490 pcf is 7849 kg/m³; water, 62.4 pcf, 999.5.
        assert!((STEEL.kg_per_m3 - 7849.0).abs() < 0.5);
        assert!((SLEEPER.kg_per_m3 - 999.5).abs() < 0.1);
        assert_eq!(STEEL.spell(Notation::Metric), "7849 kg/m³");
        let dried = CONCRETE_DRIED.spell(Notation::Imperial);
        assert_eq!(dried, "145 pcf, a value from memory");
        let litre = Volume::cubic_millimetres(1e6);
        assert!((CONCRETE_FRESH.of(litre).kg() - 2.4028).abs() < 1e-4);
    }
}
