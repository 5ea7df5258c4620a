//! The pour: batches, weather and setting.

mod clock;
mod coats;
mod evaporation;
mod hours;
mod limits;
mod maturity;
mod measures;
mod mixture;
mod plan;
mod slab;

pub use clock::{Due, Step, clock, course, due};
pub use coats::{COATS, CoatStep};
pub use evaporation::{SURFACE_WIND, UNCERTAINTY, evaporation, wind_at_surface};
pub use hours::{
    Conditions, Fitness, HourPlan, Reason, Stretch, cold, drying, fit_hours, frost, heat, hours,
    sooner, stretches,
};
pub use limits::{Limits, usual};
pub use maturity::{Q, REFERENCE, maturity, pace};
pub use measures::Measure;
pub use mixture::{Mixture, Water};
pub use plan::{Mixed, Placing, PourPlan, Window, placing, planned, reckon};
pub use slab::{Air, Course, State, time_constant};
