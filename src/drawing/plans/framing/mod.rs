//! The framing plan: the steel from above.

mod chains;
mod sheet;
mod uprights;

pub use sheet::framing_plan;
