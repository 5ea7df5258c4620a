//! The hours of the forecast, each judged.

use super::coats;
use super::evaporation::{UNCERTAINTY, evaporation, wind_at_surface};
use super::limits::Limits;
use super::maturity::pace;
use super::measures::{Measure, measures};
use super::mixture::Mixture;
use crate::design::{Design, Forecast, Hour};
use crate::units::{Moment, Speed, Temperature, TimeSpan};

/// Sun that falls on unshaded concrete warms its skin by so many kelvin a watt on the square metre: 5 K in full sun. An
/// allowance of ours, without a source; no formula for evaporation knows the sun.
const SUN: f64 = 0.005;

/// What a windbreak leaves of the wind (common practice).
pub(super) const WINDBREAK: f64 = 0.5;

/// Within so many kelvin of the warmest it is close (an allowance for an estimate).
const CLOSE: f64 = 5.0 / 1.8;

/// Sun in which coats dry too fast, watts a square metre (an allowance of ours).
const COAT_SUN: f64 = 500.0;

/// Whether something may be done in an hour.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fitness {
    /// It may.
    Fit,
    /// It may with care: the limit lies within the error of the estimate.
    Care,
    /// It may not.
    Not,
}

impl Fitness {
    /// Its name.
    pub fn name(self) -> &'static str {
        match self {
            Self::Fit => "fit",
            Self::Care => "with care",
            Self::Not => "not fit",
        }
    }
}

/// What is against an hour.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Reason {
    /// Too much evaporates.
    Evaporation,
    /// The concrete is too warm.
    Heat,
    /// The concrete is too cold.
    Cold,
    /// It freezes while the concrete is young.
    Frost,
}

impl Reason {
    /// Its name.
    pub fn name(self) -> &'static str {
        match self {
            Self::Evaporation => "evaporation",
            Self::Heat => "hot concrete",
            Self::Cold => "cold",
            Self::Frost => "frost",
        }
    }
}

/// What concrete meets that is placed in one hour.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Conditions {
    /// What goes into the mixer.
    pub mixture: Mixture,
    /// The air.
    pub air: Temperature,
    /// Relative humidity over the surface, 0 to 1.
    pub humidity: f64,
    /// The wind half a metre over it.
    pub wind: Speed,
    /// Whether a windbreak stands there already.
    pub sheltered: bool,
    /// Sun that reaches it, watts a square metre.
    pub sun: f64,
}

impl Conditions {
    /// Those of an hour, with the shade and the windbreak that the file plans.
    pub fn of(design: &Design, forecast: &Forecast, hour: &Hour) -> Self {
        let pour = &design.pour;
        let wind = wind_at_surface(hour.wind, forecast.wind_height);
        Self {
            mixture: Mixture::of(design, hour.air),
            air: hour.air,
            humidity: hour.humidity,
            sheltered: pour.windbreak,
            wind: wind * if pour.windbreak { WINDBREAK } else { 1.0 },
            sun: hour.sun.filter(|_| !pour.shade).unwrap_or(0.0),
        }
    }

    /// How warm the concrete leaves the mixer.
    pub fn concrete(&self) -> Temperature {
        self.mixture.temperature()
    }

    /// How warm its skin is.
    pub fn skin(&self) -> Temperature {
        Temperature::celsius(self.concrete().in_celsius() + SUN * self.sun)
    }

    /// What evaporates, kg/m²/h.
    pub fn evaporation(&self) -> f64 {
        evaporation(self.skin(), self.air, self.humidity, self.wind)
    }
}

/// An hour judged.
#[derive(Clone, Debug, PartialEq)]
pub struct HourPlan {
    /// The hour of the forecast.
    pub hour: Hour,
    /// How warm concrete that is mixed in it leaves the mixer.
    pub concrete: Temperature,
    /// The wind half a metre over the surface.
    pub wind: Speed,
    /// What evaporates, kg/m²/h; good to ±40 %.
    pub evaporation: f64,
    /// Whether concrete may be placed in it.
    pub fitness: Fitness,
    /// What is against it, the gravest first.
    pub reasons: Vec<Reason>,
    /// What brings it under the limits; empty where nothing has to, or nothing does.
    pub measures: Vec<Measure>,
    /// The next hour in which concrete may be placed, where this one is not fit and there is one.
    pub next: Option<Moment>,
    /// How long the mix can be worked.
    pub working: TimeSpan,
    /// Whether base and finish coats may be laid in it.
    pub coats: Fitness,
    /// How long mixed coats can be worked.
    pub coats_working: TimeSpan,
}

/// All hours of the forecast, judged; none without one.
pub fn hours(design: &Design) -> Vec<HourPlan> {
    let Some(forecast) = &design.pour.forecast else {
        return Vec::new();
    };
    let limits = Limits::of(design);
    let lows = lows(forecast, limits.no_frost);
    let own = forecast.hours.iter().zip(lows);
    let mut hours: Vec<HourPlan> = own
        .map(|(hour, low)| judged(design, forecast, hour, (low, &limits)))
        .collect();
    let mut next = None;
    for plan in hours.iter_mut().rev() {
        if plan.fitness == Fitness::Not {
            plan.next = next;
        } else {
            next = Some(plan.hour.at);
        }
    }
    hours
}

/// Beginnings of the hours in which concrete may be placed, fit ones and those that ask for care; a pour that takes several
/// hours needs as many in a row. Empty without a forecast.
pub fn fit_hours(design: &Design) -> Vec<Moment> {
    let may = hours(design).into_iter();
    may.filter(|h| h.fitness != Fitness::Not)
        .map(|h| h.hour.at)
        .collect()
}

/// A stretch of hours of one fitness, from the beginning of the first to the end of the last.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stretch {
    /// Whether concrete may be placed in it.
    pub fitness: Fitness,
    /// When it begins.
    pub from: Moment,
    /// When it ends.
    pub to: Moment,
}

/// Hours that follow each other without a gap and are alike, together.
pub fn stretches(hours: &[HourPlan]) -> Vec<Stretch> {
    let mut all: Vec<Stretch> = Vec::new();
    for hour in hours {
        let (from, to) = (hour.hour.at, hour.hour.at.plus_hours(1.0));
        match all.last_mut() {
            Some(last) if last.fitness == hour.fitness && last.to >= from => last.to = to,
            _ => all.push(Stretch {
                fitness: hour.fitness,
                from,
                to,
            }),
        }
    }
    all
}

/// The coldest air from each hour on for so long.
fn lows(forecast: &Forecast, span: TimeSpan) -> Vec<Temperature> {
    let hours = &forecast.hours;
    // Coldest last: what is warmer and earlier can never be the coldest again, so each hour is looked at twice.
    let mut waiting: std::collections::VecDeque<&Hour> = std::collections::VecDeque::new();
    let mut lows = Vec::with_capacity(hours.len());
    for hour in hours.iter().rev() {
        while waiting.front().is_some_and(|w| w.air >= hour.air) {
            waiting.pop_front();
        }
        waiting.push_front(hour);
        let is_past = |w: &Hour| w.at.hours_since(hour.at) > span.in_hours();
        while waiting.len() > 1 && waiting.back().is_some_and(|w| is_past(w)) {
            waiting.pop_back();
        }
        lows.push(waiting.back().map_or(hour.air, |w| w.air));
    }
    lows.reverse();
    lows
}

/// One hour, with the coldest air of the days after it.
fn judged(
    design: &Design,
    forecast: &Forecast,
    hour: &Hour,
    (low, limits): (Temperature, &Limits),
) -> HourPlan {
    let met = Conditions::of(design, forecast, hour);
    let found = [
        (Reason::Frost, frost(low, limits)),
        (Reason::Cold, cold(met.concrete(), limits)),
        (Reason::Heat, heat(met.concrete(), limits)),
        (Reason::Evaporation, drying(met.evaporation(), limits)),
    ];
    let mut against: Vec<_> = found
        .into_iter()
        .filter(|(_, f)| *f > Fitness::Fit)
        .collect();
    against.sort_by_key(|(reason, fitness)| (std::cmp::Reverse(*fitness), *reason));
    HourPlan {
        concrete: met.concrete(),
        wind: met.wind,
        evaporation: met.evaporation(),
        fitness: against.first().map_or(Fitness::Fit, |a| a.1),
        measures: measures(&met, &against, limits),
        reasons: against.into_iter().map(|a| a.0).collect(),
        next: None,
        working: sooner(limits.working + design.pour.retarder, met.concrete()),
        coats: coating(&met, low, limits),
        coats_working: sooner(TimeSpan::hours(coats::WORKING), met.air),
        hour: hour.clone(),
    }
}

/// A time told for 70 °F at another temperature; no longer than a day.
pub fn sooner(time: TimeSpan, temperature: Temperature) -> TimeSpan {
    let hours = time.in_hours() / pace(temperature).max(1e-6);
    TimeSpan::hours(hours.min(24.0))
}

/// What evaporates against the limit: fit where the estimate may be two fifths too low.
pub fn drying(evaporation: f64, limits: &Limits) -> Fitness {
    if evaporation * (1.0 + UNCERTAINTY) <= limits.evaporation {
        Fitness::Fit
    } else if evaporation <= limits.evaporation {
        Fitness::Care
    } else {
        Fitness::Not
    }
}

/// Warm concrete against the limit.
pub fn heat(concrete: Temperature, limits: &Limits) -> Fitness {
    let over = concrete.in_celsius() - limits.hottest.in_celsius();
    if over > 1e-9 {
        Fitness::Not
    } else if over > -CLOSE {
        Fitness::Care
    } else {
        Fitness::Fit
    }
}

/// Cold concrete against the limit.
pub fn cold(concrete: Temperature, limits: &Limits) -> Fitness {
    let under = limits.coldest.in_celsius() - concrete.in_celsius();
    if under > 1e-9 {
        Fitness::Not
    } else {
        Fitness::Fit
    }
}

/// The coldest air of the days after against frost, and against cold weather, in which the concrete must be kept warm.
pub fn frost(low: Temperature, limits: &Limits) -> Fitness {
    if low <= Temperature::celsius(0.0) {
        Fitness::Not
    } else if low < limits.cold_air {
        Fitness::Care
    } else {
        Fitness::Fit
    }
}

/// Whether coats may be laid: neither in heat nor in cold, and in hot sun only with shade.
fn coating(met: &Conditions, low: Temperature, limits: &Limits) -> Fitness {
    let freezes = low <= Temperature::celsius(0.0);
    if met.air > limits.coat_hottest || met.air < limits.coat_coldest || freezes {
        Fitness::Not
    } else if met.sun > COAT_SUN
        || met.air.in_celsius() > limits.coat_hottest.in_celsius() - 2.0 * CLOSE
        || drying(met.evaporation(), limits) > Fitness::Fit
    {
        Fitness::Care
    } else {
        Fitness::Fit
    }
}
