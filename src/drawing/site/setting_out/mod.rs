//! How the frame is set out on the ground, and how it stands once it is measured.

mod figure;
mod frame_figure;
mod measured_figure;
mod sheets;
mod values;

pub use sheets::{draw, planned};
pub use values::{
    MeasuredFrame, MeasuredRun, Peg, PushArrow, SettingOut, Stretch, StretchOf, Triangle,
};

/// The name of these sheets in the set.
pub const CHAPTER: &str = "Setting out";
