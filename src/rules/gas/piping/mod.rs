//! Fuel gas piping: tables, the low-pressure equation, and the longest-length method on a tree of branches.
//!
//! Nothing here knows of islands. Sizes are for schedule 40 steel pipe with an inlet below 2 psi.

mod capacity;
mod drop;
mod equation;
mod gas;
mod nominal;
mod table;
mod tree;

pub use capacity::{Capacity, TABLE_DROP};
pub use drop::drops;
pub use equation::{drop_over, flow_for};
pub use gas::Gas;
pub use nominal::Nominal;
pub use table::{Row, rows};
pub use tree::{Branch, Tree};
