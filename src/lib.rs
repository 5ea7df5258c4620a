//! Builds an outdoor kitchen island from one parameter file.
//!
//! The stages, each a value that the next one reads:
//!
//! ```text
//! parameters ─► design ─► plan ─► parts ─┬─► mesh ────┐
//!  (YAML,       (typed,   (runs,  (every ├─► drawing ─┤
//!   spans)      resolved) faces,  solid, ├─► takeoff ─┼─► write
//!                         grids)  placed)├─► site ────┤
//!                                        └─► rules ───┘
//! ```

pub mod catalog;
pub mod cli;
pub mod design;
pub mod diagnostics;
pub mod drawing;
pub mod geometry;
pub mod mesh;
pub mod parameters;
pub mod parts;
pub mod pipeline;
pub mod plan;
pub mod rules;
pub mod site;
pub mod table;
pub mod takeoff;
pub mod units;
pub mod write;
