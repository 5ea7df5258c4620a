//! Dimensions: chains in tiers beside a view, and levels.
//!
//! Extension lines leave a gap to the view, the first line stands 10 mm off it and the next ones 8 mm or more apart
//! (after ISO 129-1); texts stand above their line as read from below or from the right. A text that its gap cannot
//! hold moves outside with a leader. Nothing here is ever lettered over anything else.

mod axis;
mod level;
mod measured;
mod stack;
mod tier;

pub use axis::{Axis, Side};
pub use level::{LevelMark, draw_levels, draw_levels_left};
pub use measured::Dimension;
pub use stack::draw_stack;
pub use tier::Tier;
