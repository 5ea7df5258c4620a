//! How far concrete has come by its own temperature: equivalent age and maturity after ASTM C1074.

use crate::units::Temperature;

/// Activation energy over the gas constant for ordinary cement, kelvin (ASTM C1074, from memory).
pub const Q: f64 = 5000.0;

/// The temperature for which times are told: 70 °F.
pub const REFERENCE: Temperature = Temperature::fahrenheit(70.0);

/// No water reacts below −10 °C.
const STANDS_STILL: f64 = -10.0;

/// How fast it sets beside its pace at 70 °F: exp(−Q (1/T − 1/Ts)) in kelvin; nothing below −10 °C.
///
/// ```
/// use islandwright::site::pour::pace;
/// use islandwright::units::Temperature;
/// assert!((pace(Temperature::fahrenheit(70.0)) - 1.0).abs() < 1e-12);
/// ```
pub fn pace(temperature: Temperature) -> f64 {
    if temperature.in_celsius() < STANDS_STILL {
        return 0.0;
    }
    (-Q * (1.0 / temperature.in_kelvin() - 1.0 / REFERENCE.in_kelvin())).exp()
}

/// Maturity after Nurse and Saul: the sum of (T − T0) Δt, degree days; temperatures below T0 add nothing.
pub fn maturity(days: impl IntoIterator<Item = (f64, Temperature)>, datum: Temperature) -> f64 {
    let one = |(time, t): (f64, Temperature)| (t.in_celsius() - datum.in_celsius()).max(0.0) * time;
    days.into_iter().map(one).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn four_weeks_at_fifteen_degrees_are_728_degree_days() {
        // Published: 28 d at 15 °C over a datum of −11 °C.
        let c = Temperature::celsius;
        let days = (0..28).map(|_| (1.0, c(15.0)));
        assert!((maturity(days, c(-11.0)) - 728.0).abs() < 1e-9);
        assert!(maturity([(1.0, c(-20.0))], c(-11.0)).abs() < 1e-12);
    }

    #[test]
    fn twenty_degrees_more_halve_the_time() {
        // The rule of thumb: time to finishing halves for 20 °F more and doubles for 20 °F less, about 70 °F. An Arrhenius
        // factor is a little milder: a tenth is forgiven.
        let f = Temperature::fahrenheit;
        assert!((pace(f(90.0)) / 2.0 - 1.0).abs() < 0.1, "{}", pace(f(90.0)));
        assert!((pace(f(50.0)) / 0.5 - 1.0).abs() < 0.1, "{}", pace(f(50.0)));
        assert!(pace(f(0.0)).abs() < 1e-12);
    }

    proptest::proptest! {
        #[test]
        fn what_is_warmer_is_never_slower(a in -80.0..80.0_f64, more in 0.0..40.0_f64) {
            let c = Temperature::celsius;
            proptest::prop_assert!(pace(c(a + more)) >= pace(c(a)));
        }
    }
}
