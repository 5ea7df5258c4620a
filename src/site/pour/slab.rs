//! The slab as it cools to the air or warms to it, and the air it lies in.

use super::maturity::{REFERENCE, pace};
use crate::design::{Design, Hour};
use crate::units::{Moment, Temperature};

/// What a slab on a board gives to still air, watts a square metre and kelvin (common practice, an order of size).
const LOSS: f64 = 10.0;
/// Heat that a cubic metre of concrete holds by a kelvin, joules: 2,400 kg of 1,000 J/kg K (common practice).
const HOLDS: f64 = 2.4e6;
/// Steps of the sum, hours: finely while it sets, then from hour to hour.
const FINE: f64 = 0.25;
const COARSE: f64 = 1.0;
/// So long the fine steps go.
const SETTING: f64 = 48.0;
/// Beyond ten years nothing is told.
const LONGEST: f64 = 87_600.0;

/// The air that a slab lies in: the forecast's hours with straight lines between them, its mean before and after it; 70 °F
/// where there is none.
#[derive(Clone, Debug)]
pub struct Air<'a> {
    hours: &'a [Hour],
    mean: Temperature,
}

impl<'a> Air<'a> {
    /// The air of a design's forecast.
    pub fn of(design: &'a Design) -> Self {
        let hours = design.pour.forecast.as_ref().map_or(&[][..], |f| &f.hours);
        let sum: f64 = hours.iter().map(|h| h.air.in_celsius()).sum();
        let mean = if hours.is_empty() {
            REFERENCE
        } else {
            Temperature::celsius(sum / hours.len() as f64)
        };
        Self { hours, mean }
    }

    /// How warm it is at a moment, so many hours after another.
    pub fn at(&self, from: Moment, after: f64) -> Temperature {
        let behind = |h: &Hour| h.at.hours_since(from) <= after;
        let next = self.hours.partition_point(behind);
        let Some(before) = next.checked_sub(1).and_then(|i| self.hours.get(i)) else {
            return self.mean;
        };
        let since = after - before.at.hours_since(from);
        let Some(later) = self.hours.get(next) else {
            return if since <= 1.0 { before.air } else { self.mean };
        };
        let span = later.at.hours_since(before.at).max(1e-9);
        let (a, b) = (before.air.in_celsius(), later.air.in_celsius());
        Temperature::celsius(a + (b - a) * (since / span).clamp(0.0, 1.0))
    }

    /// The mean of the forecast.
    pub fn mean(&self) -> Temperature {
        self.mean
    }

    /// Hours from a moment until the forecast ends; nothing where that is past.
    fn foretold(&self, from: Moment) -> f64 {
        let last = self.hours.last();
        last.map_or(0.0, |h| (h.at.hours_since(from) + 1.0).clamp(0.0, 20_000.0))
    }
}

/// Where a slab has come at a moment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct State {
    /// Hours since placing began.
    pub time: f64,
    /// Hours that it would have taken to come so far at 70 °F: its equivalent age, te = Σ exp[−Q (1/T − 1/Ts)] Δt.
    pub age: f64,
    /// How warm the concrete is.
    pub temperature: Temperature,
}

/// The states of a slab from placing on, in order of time, until the forecast is over and two days have passed.
///
/// Its temperature goes from its own to the air's, T' = (Ta − T) / τ; the heat of the reaction is left out, for a thin slab
/// loses it as fast as it makes it.
#[derive(Clone, Debug, PartialEq)]
pub struct Course {
    states: Vec<State>,
    /// The pace afterwards.
    later: f64,
    mean: Temperature,
}

/// Hours in which a slab comes so near the air that a third of the difference is left.
pub fn time_constant(design: &Design) -> f64 {
    let thickness = design.counter.thickness.mm().max(1.0) / 1000.0;
    HOLDS * thickness / LOSS / 3600.0
}

impl Course {
    /// The course of concrete that is placed so warm at a moment.
    pub fn new(design: &Design, air: &Air, placed: Moment, warm: Temperature) -> Self {
        let tau = time_constant(design);
        let end = air.foretold(placed).max(SETTING);
        let mut now = State {
            time: 0.0,
            age: 0.0,
            temperature: warm,
        };
        let mut states = vec![now];
        while now.time < end {
            let step = if now.time < SETTING { FINE } else { COARSE };
            let around = air.at(placed, now.time + step / 2.0).in_celsius();
            let apart = now.temperature.in_celsius() - around;
            let cooled = |dt: f64| Temperature::celsius(around + apart * (-dt / tau).exp());
            // Simpson's rule over the step.
            let paces = [0.0, step / 2.0, step].map(|dt| pace(cooled(dt)));
            now = State {
                time: now.time + step,
                age: now.age + step / 6.0 * (paces[0] + 4.0 * paces[1] + paces[2]),
                temperature: cooled(step),
            };
            states.push(now);
        }
        Self {
            states,
            later: pace(air.mean()),
            mean: air.mean(),
        }
    }

    /// When it has an equivalent age: hours since placing began, and how warm it then is.
    pub fn when(&self, age: f64) -> (f64, Temperature) {
        let next = self.states.partition_point(|s| s.age < age);
        let before = next.checked_sub(1).and_then(|i| self.states.get(i));
        match (before, self.states.get(next)) {
            (Some(a), Some(b)) => {
                let part = ((age - a.age) / (b.age - a.age).max(1e-12)).clamp(0.0, 1.0);
                let (from, to) = (a.temperature.in_celsius(), b.temperature.in_celsius());
                let warm = Temperature::celsius(from + (to - from) * part);
                (a.time + (b.time - a.time) * part, warm)
            }
            (None, Some(first)) => (first.time, first.temperature),
            (last, None) => {
                let (time, reached) = last.map_or((0.0, 0.0), |s| (s.time, s.age));
                let more = (age - reached) / self.later.max(1e-9);
                ((time + more).min(LONGEST), self.mean)
            }
        }
    }

    /// The states.
    pub fn states(&self) -> &[State] {
        &self.states
    }
}
