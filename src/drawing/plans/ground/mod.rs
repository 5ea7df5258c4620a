//! Plans of the ground: the packs under the sleepers, and the levels as they were measured.

mod level_plan;
mod shim_plan;
mod signs;

pub use level_plan::level_plan;
pub use shim_plan::shim_plan;
