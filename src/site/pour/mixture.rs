//! How warm concrete comes out of the mixer.

use crate::catalog::{Form, Need};
use crate::design::Design;
use crate::units::Temperature;

/// Specific heat of cement, sand and stone as a share of water's (ACI 305R, from memory).
const SOLIDS: f64 = 0.22;

/// Kilograms of water to a kilogram of dry mix where no bag says: 3 quarts to 80 lb (common practice).
const USUAL_WATER: f64 = 0.078;

/// Heat that melts a kilogram of ice, in kilograms of water by a degree Celsius.
const MELTING: f64 = 80.0;

/// No more of the mixing water is replaced by ice than this (ACI 305R, from memory).
const MOST_ICE: f64 = 0.75;

/// The coldest water that a builder's hose and tub give.
const COLDEST: Temperature = Temperature::celsius(4.0);

/// The warmest water that may meet cement (ACI 306R, 140 °F, from memory).
const WARMEST: Temperature = Temperature::celsius(60.0);

/// Dry mix and water as they go into the mixer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mixture {
    /// Kilograms of water to a kilogram of dry mix.
    pub ratio: f64,
    /// How warm the dry mix is.
    pub bags: Temperature,
    /// How warm the water is.
    pub water: Temperature,
}

/// How the water is made to give concrete of a wanted temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Water {
    /// Water of this temperature.
    Of(Temperature),
    /// This share of the water as ice, the rest as it is.
    Ice(f64),
}

impl Mixture {
    /// What a design mixes in air of a temperature: the first bag of concrete in the supplies that says its water gives the
    /// ratio.
    pub fn of(design: &Design, air: Temperature) -> Self {
        let pour = &design.pour;
        Self {
            ratio: ratio(design),
            bags: pour.bags.as_ref().map_or(air, |b| b.value),
            water: pour.water.value,
        }
    }

    /// How warm the concrete is: ACI 305R's equation, each by its mass and specific heat,
    /// T = (0.22 Ts Ws + Tw Ww) / (0.22 Ws + Ww).
    pub fn temperature(self) -> Temperature {
        let heat = SOLIDS * self.bags.in_celsius() + self.ratio * self.water.in_celsius();
        Temperature::celsius(heat / (SOLIDS + self.ratio))
    }

    /// What cools the concrete to a temperature; `None` where not even ice does.
    pub fn cooled_to(self, wanted: Temperature) -> Option<Water> {
        let water = self.water_for(wanted);
        if water >= COLDEST {
            return Some(Water::Of(water));
        }
        let own = self.water.in_celsius();
        let short = SOLIDS * self.bags.in_celsius() + self.ratio * own
            - wanted.in_celsius() * (SOLIDS + self.ratio);
        let share = short / ((MELTING + own) * self.ratio);
        (share <= MOST_ICE).then_some(Water::Ice(share))
    }

    /// The water that warms the concrete to a temperature; `None` where it would be too hot for cement.
    pub fn warmed_to(self, wanted: Temperature) -> Option<Temperature> {
        Some(self.water_for(wanted)).filter(|w| *w <= WARMEST)
    }

    fn water_for(self, wanted: Temperature) -> Temperature {
        let whole = wanted.in_celsius() * (SOLIDS + self.ratio);
        Temperature::celsius((whole - SOLIDS * self.bags.in_celsius()) / self.ratio)
    }
}

/// Kilograms of water to a kilogram of dry mix.
fn ratio(design: &Design) -> f64 {
    let mut bags = design.supplies.of(&Need::Concrete);
    let told = bags.find_map(|s| match &s.form {
        Form::Bag {
            mass,
            water: Some(water),
            ..
        } if mass.kg() > 0.0 => Some(water.mm3() / 1.0e6 / mass.kg()),
        _ => None,
    });
    told.filter(|r| (0.01..1.0).contains(r))
        .unwrap_or(USUAL_WATER)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn masses_and_specific_heats_give_the_temperature() {
        // By hand, in pounds and °F: 80 lb of dry mix at 90 °F, 6 lb of water at 60 °F: (0.22 × 80 × 90 + 6 × 60) / (0.22 × 80 + 6)
        // = 1,944 / 23.6 = 82.4 °F.
        let f = Temperature::fahrenheit;
        let mix = Mixture {
            ratio: 6.0 / 80.0,
            bags: f(90.0),
            water: f(60.0),
        };
        assert!((mix.temperature().in_fahrenheit() - 82.37).abs() < 0.01);
        // To 75 °F: (75 × 23.6 − 1,584) / 6 = 31 °F: no water. Ice by hand: (1,944 − 75 × 23.6) / (144 + 60 − 32) = 1.01 lb.
        let Some(Water::Ice(share)) = mix.cooled_to(f(75.0)) else {
            panic!()
        };
        assert!((share - 1.01 / 6.0).abs() < 0.001, "{share}");
        // To 78 °F: (78 × 23.6 − 1,584) / 6 = 42.8 °F.
        let Some(Water::Of(water)) = mix.cooled_to(f(78.0)) else {
            panic!()
        };
        assert!((water.in_fahrenheit() - 42.8).abs() < 0.01);
        assert_eq!(mix.cooled_to(f(32.0)), None);
        // Bags at 40 °F to 55 °F: (55 × 23.6 − 704) / 6 = 99 °F.
        let cold = Mixture {
            bags: f(40.0),
            ..mix
        };
        assert!((cold.warmed_to(f(55.0)).unwrap().in_fahrenheit() - 99.0).abs() < 0.01);
        assert_eq!(cold.warmed_to(f(70.0)), None);
    }
}
