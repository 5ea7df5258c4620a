//! The frame as it was measured: the real shape of each run, which reading is likely wrong, and what follows it.

mod follow;
mod frame;
mod slip;
mod solve;
mod square;
#[cfg(test)]
mod tests;

pub(super) use follow::{follow, moved};
pub use frame::{Follow, FrameAsBuilt, Planned, RunAsBuilt, Suspect, TapedLength};
pub use slip::Slip;
pub use square::Push;
