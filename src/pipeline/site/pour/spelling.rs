//! How the pour's numbers are told: units and words.

use crate::site::pour::{HourPlan, Measure};
use crate::units::{Notation, POUND_A_FOOT, Speed, Temperature};

/// Said wherever evaporation is told.
pub(super) const PROMISE: &str = "The estimate of evaporation is good to ±40 % (ACI 305R), and nothing is promised beyond that: look at the surface, the sky and the thermometer.";

/// Temperature, wind and evaporation in the file's units.
#[derive(Clone, Copy, Debug)]
pub(super) struct Told(pub(super) Notation);

impl Told {
    pub(super) fn imperial(self) -> bool {
        self.0 == Notation::Imperial
    }

    pub(super) fn degrees(self, t: Temperature) -> f64 {
        if self.imperial() {
            t.in_fahrenheit()
        } else {
            t.in_celsius()
        }
    }

    pub(super) fn degree(self) -> &'static str {
        if self.imperial() { "°F" } else { "°C" }
    }

    pub(super) fn wind(self, speed: Speed) -> f64 {
        if self.imperial() {
            speed.mps() * 3600.0 / 1609.344
        } else {
            speed.in_kilometres_an_hour()
        }
    }

    pub(super) fn speed(self) -> &'static str {
        if self.imperial() { "mph" } else { "km/h" }
    }

    pub(super) fn drying(self, kg: f64) -> f64 {
        if self.imperial() {
            kg / POUND_A_FOOT
        } else {
            kg
        }
    }

    pub(super) fn rate(self) -> &'static str {
        if self.imperial() {
            "lb/sq ft/h"
        } else {
            "kg/m²/h"
        }
    }

    /// Decimals of an evaporation.
    pub(super) fn decimals(self) -> u8 {
        if self.imperial() { 4 } else { 3 }
    }

    /// What is against an hour, in words.
    pub(super) fn against(hour: &HourPlan) -> String {
        let names = hour.reasons.iter().map(|r| r.name());
        names.collect::<Vec<_>>().join(", ")
    }

    /// What helps in an hour, in words.
    pub(super) fn helps(self, hour: &HourPlan) -> String {
        let all = hour.measures.iter().map(|m: &Measure| m.spell(self.0));
        all.collect::<Vec<_>>().join(", ")
    }
}
