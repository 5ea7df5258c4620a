//! What every sheet of the set has: border, title block, scale bar, caution.

mod frame;
mod scale_bar;
mod title_block;

pub use frame::Frame;
