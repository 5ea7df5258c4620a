//! The ground under the island as it was measured: how it falls, and what packs the sleepers to level.

mod approach;
mod datum;
mod fall;
mod posts;
mod reckon;
mod stack;
mod stations;
mod surface;
#[cfg(test)]
mod tests;

pub use approach::Approach;
pub use fall::Fall;
pub use posts::{Post, boxes};
pub use reckon::{Fitted, Form, Ground, Level, Pack, reckon};
pub use stack::Stacks;
pub use surface::{Height, Surface};
