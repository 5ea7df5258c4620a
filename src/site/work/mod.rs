//! The order of work: what is done when, by whom, and what must wait.
//!
//! [`network`] knows steps, links and waits and nothing of a calendar; [`calendar`] knows working hours and nothing of steps;
//! [`schedule`] puts one into the other, with hands and weather.

mod amounts;
pub mod calendar;
mod cautions;
mod driving;
mod links;
pub mod network;
mod notes;
mod order;
mod pour_day;
mod reckon;
pub mod schedule;
mod slack;
#[cfg(test)]
mod tests;
#[cfg(test)]
mod trial;
mod weather;

pub use amounts::Amounts;
pub use order::{Order, Source, Step, Times, Waiting};
pub use reckon::reckon;
pub use weather::Weather;
