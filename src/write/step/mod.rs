//! STEP, ISO 10303-21: the exact solids as an assembly, after the application protocol 214 (`AUTOMOTIVE_DESIGN`).
//!
//! That protocol's entities for solids and assemblies went unchanged into its successor, 242, and older programs read it
//! too.

mod exchange;
mod island;
mod product;
mod shape;

pub use self::island::{StepTitles, step};
