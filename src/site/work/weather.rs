//! What the work is told of the weather and of setting concrete.

use crate::catalog::work::Due;
use crate::design::{Design, Hour};
use crate::site::pour::{self, PourPlan};
use crate::units::{Moment, Temperature, TimeSpan};

/// Coats are laid between these: 40 °F is the least of ASTM C926, value from memory; 90 °F is common practice.
const COLD: Temperature = Temperature::fahrenheit(40.0);
const HOT: Temperature = Temperature::fahrenheit(90.0);
/// A coat must not freeze the night after: common practice.
const FROST: Temperature = Temperature::celsius(0.0);

/// When the concrete is so far after placing began.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dues {
    /// It bears the float.
    pub float: TimeSpan,
    /// It can be closed with steel.
    pub trowel: TimeSpan,
    /// Its edge stands without the form.
    pub strip: TimeSpan,
    /// It can be sanded.
    pub sand: TimeSpan,
    /// It can be sealed.
    pub seal: TimeSpan,
}

impl Dues {
    /// At the usual 70 °F: common practice.
    pub const USUAL: Self = Self {
        float: TimeSpan::hours(1.25),
        trowel: TimeSpan::hours(2.0),
        strip: TimeSpan::hours(24.0),
        sand: TimeSpan::hours(72.0),
        seal: TimeSpan::hours(168.0),
    };

    /// When it is so far.
    pub fn of(&self, due: Due) -> TimeSpan {
        match due {
            Due::Float => self.float,
            Due::StripForms => self.strip,
            Due::Sand => self.sand,
            Due::Seal => self.seal,
        }
    }
}

/// The weather to come, as far as the work asks.
pub struct Weather<'a> {
    /// From when to when there is a forecast.
    pub covered: Option<(Moment, Moment)>,
    /// The beginnings of its hours in which concrete may be placed.
    pub placing: Vec<Moment>,
    /// Its hours that are no hours for coats.
    pub no_coats: Vec<(Moment, Moment)>,
    /// How far concrete is that is placed at some moment; the usual where no moment is known.
    pub dues: Box<dyn Fn(Option<Moment>) -> Dues + 'a>,
    /// How long placing takes by its batches, where that is known.
    pub time: Option<TimeSpan>,
}

impl<'a> Weather<'a> {
    /// What a design's forecast says.
    pub fn of(design: &'a Design, plan: &PourPlan) -> Self {
        let hours = design.pour.forecast.as_ref().map_or(&[][..], |f| &f.hours);
        let ends = hours.first().zip(hours.last());
        let usual = dues(&plan.clock);
        Self {
            covered: ends.map(|(first, last)| (first.at, last.at.plus_hours(1.0))),
            placing: pour::fit_hours(design),
            no_coats: no_coats(hours),
            dues: Box::new(move |placed| placed.map_or(usual, |at| dues(&pour::clock(design, at)))),
            time: plan.placing.map(|p| p.time),
        }
    }

    /// No forecast.
    pub fn unknown() -> Self {
        Self {
            covered: None,
            placing: Vec::new(),
            no_coats: Vec::new(),
            dues: Box::new(|_| Dues::USUAL),
            time: None,
        }
    }
}

/// What the setting clock says; the usual where it says nothing.
fn dues(clock: &[pour::Due]) -> Dues {
    let at = |step: pour::Step, usual: TimeSpan| {
        let due = clock.iter().find(|d| d.step == step);
        due.map_or(usual, |d| d.after)
    };
    Dues {
        float: at(pour::Step::Float, Dues::USUAL.float),
        trowel: at(pour::Step::Trowel, Dues::USUAL.trowel),
        strip: at(pour::Step::StripForms, Dues::USUAL.strip),
        sand: at(pour::Step::Sand, Dues::USUAL.sand),
        seal: at(pour::Step::Seal, Dues::USUAL.seal),
    }
}

/// The hours that are too cold or too hot for coats, or followed by frost within a day.
fn no_coats(hours: &[Hour]) -> Vec<(Moment, Moment)> {
    let frosts: Vec<Moment> = hours
        .iter()
        .filter(|h| h.air < FROST)
        .map(|h| h.at)
        .collect();
    let bad = hours.iter().filter(|h| {
        let next = frosts.partition_point(|f| *f < h.at);
        let frost = frosts.get(next).is_some_and(|f| f.hours_since(h.at) < 24.0);
        frost || h.air < COLD || h.air > HOT
    });
    bad.map(|h| (h.at, h.at.plus_hours(1.0))).collect()
}
