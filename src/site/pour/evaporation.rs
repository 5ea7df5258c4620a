//! How much water leaves the fresh surface.

use crate::units::{Length, Speed, Temperature};

/// How high above the surface the formula's wind blows: 0.5 m.
pub const SURFACE_WIND: Length = Length::millimetres(500.0);

/// The estimate may be so far off, as a share of itself (ACI 305R).
pub const UNCERTAINTY: f64 = 0.4;

/// Water that evaporates from fresh concrete, kilograms a square metre and hour, after Uno (1998), ACI Materials Journal
/// 95-M34: E = 5 ([Tc + 18]^2.5 − r [Ta + 18]^2.5) (V + 4) / 10⁶, in °C and km/h with the wind at 0.5 m.
///
/// It is an estimate, good to ±40 %. Where the air would wet the surface, nothing evaporates: 0.
///
/// ```
/// use islandwright::site::pour::evaporation;
/// use islandwright::units::{Speed, Temperature};
/// let wind = Speed::metres_a_second(19.0 / 3.6);
/// let e = evaporation(Temperature::celsius(31.0), Temperature::celsius(27.0), 0.5, wind);
/// assert!((1.1..1.25).contains(&e));
/// ```
pub fn evaporation(concrete: Temperature, air: Temperature, humidity: f64, wind: Speed) -> f64 {
    let drive = |t: Temperature| (t.in_celsius() + 18.0).max(0.0).powf(2.5);
    let across = drive(concrete) - humidity.clamp(0.0, 1.0) * drive(air);
    let e = 5.0e-6 * across * (wind.in_kilometres_an_hour().max(0.0) + 4.0);
    if e.is_finite() { e.max(0.0) } else { 0.0 }
}

/// The wind half a metre over the surface, from the wind that is told for a height: the logarithmic profile over short
/// grass of FAO Irrigation and Drainage Paper 56, equation 47 (from memory), u(z) ~ ln(67.8 z − 5.42). Of a wind at 10 m
/// it leaves 0.51; walls and hedges leave less.
pub fn wind_at_surface(wind: Speed, height: Length) -> Speed {
    let over_grass = |h: Length| (67.8 * (h.mm() / 1000.0).max(0.2) - 5.42).ln();
    wind * (over_grass(SURFACE_WIND) / over_grass(height))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn e(concrete: f64, air: f64, humidity: f64, kph: f64) -> f64 {
        let c = Temperature::celsius;
        evaporation(
            c(concrete),
            c(air),
            humidity,
            Speed::metres_a_second(kph / 3.6),
        )
    }

    #[test]
    fn the_example_of_aci_305r_comes_out() {
        // ACI 305R, worked by its nomograph: air 27 °C, 50 %, concrete 31 °C, wind 19 km/h: about 1.2 kg/m²/h.
        assert!((1.1..1.25).contains(&e(31.0, 27.0, 0.5, 19.0)));
    }

    #[test]
    fn the_profile_leaves_half_of_a_wind_at_ten_metres() {
        // FAO-56, table 2.9: a wind told at 10 m is 0.748 of itself at 2 m.
        let ten = Length::millimetres(10_000.0);
        let two = Length::millimetres(2000.0);
        let wind = Speed::metres_a_second(10.0);
        let surface = wind_at_surface(wind, ten).mps();
        assert!((surface / wind_at_surface(wind, two).mps() - 0.748).abs() < 0.001);
        assert!((surface - 5.14).abs() < 0.01, "{surface}");
        assert!((wind_at_surface(wind, SURFACE_WIND).mps() - 10.0).abs() < 1e-12);
    }

    proptest! {
        #[test]
        fn wind_and_warmth_dry_and_damp_air_does_not(
            concrete in -10.0..60.0_f64, air in -20.0..50.0_f64, humidity in 0.0..1.0_f64, kph in 0.0..120.0_f64, more in 0.1..20.0_f64
        ) {
            let here = e(concrete, air, humidity, kph);
            prop_assert!(here >= 0.0);
            prop_assert!(e(concrete, air, humidity, kph + more) >= here);
            prop_assert!(e(concrete + more, air, humidity, kph) >= here);
            prop_assert!(e(concrete, air, (humidity + more / 20.0).min(1.0), kph) <= here);
            if here > 0.0 {
                prop_assert!(e(concrete, air, humidity, kph + more) > here);
                prop_assert!(e(concrete + more, air, humidity, kph) > here);
            }
        }
    }
}
