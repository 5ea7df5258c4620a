//! The counter in plan: what is cut, cast in and jointed.

mod brackets;
mod cross_chain;
mod edges;
mod facts;
mod fall;
mod joints;
mod reinforcement;
mod sheet;

pub use sheet::{counter, has_edge_schedule};
