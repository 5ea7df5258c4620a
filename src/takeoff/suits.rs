//! Whether a supply has the size that the design asks for.

use crate::catalog::{Need, Supply};
use crate::design::Design;
use crate::units::Length;

/// True when a supply serves its need in this design: it has the asked size to half a millimetre, or none.
pub(super) fn suits(design: &Design, supply: &Supply) -> bool {
    let trade = &design.trade;
    let asked = match (&supply.need, &design.tile_band) {
        (Need::Sleeper, _) => (trade.sleeper_width.value, trade.sleeper_height.value),
        (Need::Tile, Some(band)) => (band.tile_width.value, band.tile_height.value),
        _ => return true,
    };
    let near = |a: Length, b: Length| (a - b).abs() < Length::millimetres(0.5);
    supply
        .size
        .is_none_or(|size| near(size.0, asked.0) && near(size.1, asked.1))
}
