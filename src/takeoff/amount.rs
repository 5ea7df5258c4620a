//! Amounts in their own kind of unit.

use crate::units::{Area, Length, Mass, Notation, Volume};

/// An amount in its own kind of unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Amount {
    /// A length.
    Length(Length),
    /// An area.
    Area(Area),
    /// A volume.
    Volume(Volume),
    /// A mass.
    Mass(Mass),
    /// A number of pieces.
    Count(u32),
}

/// The pound, kilograms.
const POUND: f64 = 0.453_592_37;

impl Amount {
    /// Its number in mm, mm², mm³, kg or pieces.
    pub fn size(self) -> f64 {
        match self {
            Self::Length(length) => length.mm(),
            Self::Area(area) => area.mm2(),
            Self::Volume(volume) => volume.mm3(),
            Self::Mass(mass) => mass.kg(),
            Self::Count(count) => f64::from(count),
        }
    }

    /// So many mm, mm², mm³, kg or pieces, of the same kind as this; pieces are rounded up.
    pub fn resized(self, size: f64) -> Self {
        match self {
            Self::Length(_) => Self::Length(Length::millimetres(size)),
            Self::Area(_) => Self::Area(Area::square_millimetres(size)),
            Self::Volume(_) => Self::Volume(Volume::cubic_millimetres(size)),
            Self::Mass(_) => Self::Mass(Mass::kilograms(size)),
            Self::Count(_) => {
                Self::Count((size - 1e-9).ceil().clamp(0.0, f64::from(u32::MAX)) as u32)
            }
        }
    }

    /// Its number, decimals to print and unit: feet, square feet, cubic feet and pounds, or metres, square metres,
    /// litres and kilograms; pieces have no unit.
    pub fn measure(self, notation: Notation) -> (f64, u8, &'static str) {
        let imperial = notation == Notation::Imperial;
        match self {
            Self::Length(l) if imperial => (l.in_inches() / 12.0, 2, "ft"),
            Self::Length(l) => (l.mm() / 1.0e3, 2, "m"),
            Self::Area(a) if imperial => (a.in_square_feet(), 2, "ft²"),
            Self::Area(a) => (a.mm2() / 1.0e6, 3, "m²"),
            Self::Volume(v) if imperial => (v.in_cubic_feet(), 3, "ft³"),
            Self::Volume(v) => (v.mm3() / 1.0e6, 1, "L"),
            Self::Mass(m) if imperial => (m.kg() / POUND, 1, "lb"),
            Self::Mass(m) => (m.kg(), 1, "kg"),
            Self::Count(n) => (f64::from(n), 0, ""),
        }
    }

    /// Its number and unit as text.
    pub fn spell(self, notation: Notation) -> String {
        let (number, decimals, unit) = self.measure(notation);
        format!("{number:.*} {unit}", usize::from(decimals))
            .trim_end()
            .to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn amounts_are_spelt_in_the_units_of_the_file() {
        // 1 ft² = 92,903.04 mm², 1 ft³ = 28.3168466 L, 1 lb = 0.45359237 kg by definition.
        let area = Amount::Area(Area::square_millimetres(92_903.04 * 12.5));
        let volume = Amount::Volume(Volume::cubic_millimetres(28_316_846.592 / 2.0));
        let mass = Amount::Mass(Mass::kilograms(45.359_237));
        assert_eq!(area.spell(Notation::Imperial), "12.50 ft²");
        assert_eq!(volume.spell(Notation::Imperial), "0.500 ft³");
        assert_eq!(volume.spell(Notation::Metric), "14.2 L");
        assert_eq!(mass.spell(Notation::Imperial), "100.0 lb");
        assert_eq!(Amount::Count(7).resized(7.7).spell(Notation::Metric), "8");
    }
}
