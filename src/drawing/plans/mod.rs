//! Plans: the island as it will stand, its framing, and the counter.

mod chains;
mod counter;
mod face_marks;
mod framing;
mod ground;
mod island;
mod key;
mod labels;
mod layout;
mod listed;
mod section_marks;
mod spot;
mod style;
mod walls;

pub use counter::has_edge_schedule;
pub use face_marks::symbol as face_symbol;
pub use ground::{level_plan, shim_plan};

pub use island::{SitePlan, service_signs};
pub use listed::{counter, counter_planned, framing, framing_planned, island, island_planned};
pub use section_marks::symbol as section_symbol;
