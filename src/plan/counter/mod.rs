//! The counter in plan: its sides, corners, notches, cutouts, turndown, and what it is cast on.

mod check;
mod cutout;
mod description;
mod layout;
mod profile;
mod room;
mod side;
#[cfg(test)]
mod tests;

pub use description::{
    CounterCutout, CounterPlan, CounterSide, FORM_THICKNESS, SideKind, TurndownLine,
};
pub(super) use layout::lay_out;
use room::corner_room;
