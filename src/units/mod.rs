//! Quantities with their units: lengths, areas, volumes, masses and money as types, how they are read and how they are spelt.
//!
//! A [`Length`] is stored in millimetres. Length × length is an [`Area`], area × length a [`Volume`]; other
//! products do not compile.

mod display;
mod money;
mod parse;
mod quantity;

pub use display::{Chain, Notation};
pub use money::{Currency, Money};
pub use parse::{LengthError, parse_length};
pub use quantity::{Area, Length, Mass, Volume};
