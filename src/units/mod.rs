//! Quantities with their units: lengths, areas, volumes, masses, forces, stresses, power, temperatures, speeds, times and money as types, how they are read and how they are spelt.
//!
//! A [`Length`] is stored in millimetres. Length × length is an [`Area`], area × length a [`Volume`]; other
//! products do not compile.

mod colour;
mod display;
mod moment;
mod money;
mod parse;
mod parse_amount;
mod parse_error;
mod parse_load;
mod parse_money;
mod parse_number;
mod parse_weather;
mod quantity;
mod temperature;
mod unit;

pub use colour::{Colour, parse_colour};
pub use display::{Chain, Notation};
pub use moment::{Moment, parse_moment};
pub use money::{Currency, Money};
pub use parse::parse_length;
pub use parse_amount::{parse_area, parse_mass, parse_share, parse_volume};
pub use parse_error::ParseError;
pub use parse_load::{
    GRAVITY, POUND_FORCE, PSF, PSI, parse_angle, parse_count, parse_force, parse_power,
    parse_slope, parse_stress,
};
pub use parse_money::parse_money;
pub use parse_weather::{
    POUND_A_FOOT, parse_evaporation, parse_irradiance, parse_speed, parse_temperature,
    parse_time_span,
};
pub use quantity::{Area, Force, Length, Mass, Power, Speed, Stress, TimeSpan, Volume};
pub use temperature::Temperature;
pub use unit::Unit;
