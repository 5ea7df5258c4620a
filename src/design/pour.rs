//! How the concrete is mixed and placed, and the weather it is placed in.

use super::Placed;
use crate::diagnostics::Place;
use crate::units::{Moment, Speed, Temperature};

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
    /// The wind.
    pub wind: Speed,
    /// The sun's power on level ground, watts a square metre; `None` where the forecast does not say.
    pub sun: Option<f64>,
}

/// The weather to come, by the hour.
///
/// Invariant: the hours are in order of time, none twice.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Forecast {
    /// Its place in the file.
    pub place: Place,
    /// The hours.
    pub hours: Vec<Hour>,
}

/// How the concrete is mixed and placed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Pour {
    /// Its group in the file.
    pub place: Place,
    /// When placing begins, where the file says.
    pub at: Option<Placed<Moment>>,
    /// The weather to come, where the file has a forecast.
    pub forecast: Option<Forecast>,
}
