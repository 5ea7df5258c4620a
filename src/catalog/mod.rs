//! Trade data: what steel, boards and papers there are. The data files stand in `params/trade`.

pub mod density;
mod embedded;
mod need;
mod paper;
pub mod practice;
mod punch_outs;
mod steel;
mod supply;
mod trade_data;
pub mod work;

pub use density::Density;
pub use embedded::TRADE_FILES;
pub use need::Need;
pub use paper::{Paper, PaperKind};
pub use punch_outs::{PUNCH_OUTS, PunchOuts};
pub use steel::{Designation, SectionKind, SteelSection};
pub use supply::{Form, Gives, Supplies, Supply};
pub use trade_data::{TradeData, TradeEntry};
