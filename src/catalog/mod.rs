//! Trade data: what steel, boards and papers there are. The data files stand in `params/trade`.

mod paper;
mod steel;

pub use paper::{Paper, PaperKind};
pub use steel::{Designation, SectionKind, SteelSection};
