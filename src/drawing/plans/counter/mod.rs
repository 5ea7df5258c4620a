//! The counter in plan: what is cut, cast in and jointed.

mod cross_chain;
mod sheet;

pub use sheet::counter;
