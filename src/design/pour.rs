//! How the concrete is mixed and placed, and the weather it is placed in.

use super::Placed;
use crate::diagnostics::Place;
use crate::units::{Length, Moment, Speed, Temperature, TimeSpan};

/// One hour of the forecast, from its moment on.
#[derive(Clone, Debug, PartialEq)]
pub struct Hour {
    /// Its entry in the file.
    pub place: Place,
    /// When it begins.
    pub at: Moment,
    /// The air's temperature in the shade.
    pub air: Temperature,
    /// Relative humidity, 0 to 1.
    pub humidity: f64,
    /// The wind at the forecast's height.
    pub wind: Speed,
    /// The sun's power on level ground, watts a square metre; `None` where the forecast does not say.
    pub sun: Option<f64>,
}

/// The weather to come, by the hour.
///
/// Invariant: the hours are in order of time, none twice.
#[derive(Clone, Debug, PartialEq)]
pub struct Forecast {
    /// Its place in the file.
    pub place: Place,
    /// How high above the ground the wind is told.
    pub wind_height: Length,
    /// The hours.
    pub hours: Vec<Hour>,
}

/// How the concrete is mixed and placed.
#[derive(Clone, Debug, PartialEq)]
pub struct Pour {
    /// Its group in the file.
    pub place: Place,
    /// When placing begins, where the file says.
    pub at: Option<Placed<Moment>>,
    /// How many people.
    pub crew: Placed<u32>,
    /// How many mixers.
    pub mixers: Placed<u32>,
    /// From one batch of one mixer to the next; what is usual for the crew where the file does not say.
    pub batch_time: Placed<TimeSpan>,
    /// How warm the bags are; `None` where they are as warm as the air.
    pub bags: Option<Placed<Temperature>>,
    /// How warm the mixing water is.
    pub water: Placed<Temperature>,
    /// Whether the mix holds silica fume.
    pub silica_fume: bool,
    /// By how much a retarder delays setting at 70 °F; nothing without one.
    pub retarder: TimeSpan,
    /// Whether the counter is shaded.
    pub shade: bool,
    /// Whether a windbreak stands there.
    pub windbreak: bool,
    /// The weather to come, where the file has a forecast.
    pub forecast: Option<Forecast>,
}

/// Minutes from one batch to the next with so many people to a mixer (common practice).
fn usual_minutes(crew: u32, mixers: u32) -> f64 {
    match crew / mixers.max(1) {
        0 | 1 => 10.0,
        2 => 6.0,
        3 => 5.0,
        _ => 4.0,
    }
}

impl Pour {
    /// What is usual where the file is silent: two people with one mixer, water from the main.
    pub fn usual(metric: bool) -> Self {
        let water = if metric {
            Temperature::celsius(15.0)
        } else {
            Temperature::fahrenheit(60.0)
        };
        Self {
            place: Place {
                key: "pour".to_owned(),
                ..Place::default()
            },
            at: None,
            crew: told(2),
            mixers: told(1),
            batch_time: told(Self::usual_batch_time(2, 1)),
            bags: None,
            water: told(water),
            silica_fume: false,
            retarder: TimeSpan::ZERO,
            shade: false,
            windbreak: false,
            forecast: None,
        }
    }

    /// From one batch to the next where the file does not say.
    pub fn usual_batch_time(crew: u32, mixers: u32) -> TimeSpan {
        TimeSpan::minutes(usual_minutes(crew, mixers))
    }
}

fn told<T>(value: T) -> Placed<T> {
    Placed {
        value,
        place: Place::default(),
    }
}
