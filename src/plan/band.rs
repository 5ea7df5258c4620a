//! The tile band: its rows, and where the finish coat below it stops.

use super::{Layer, Layers, PlanLevels};
use crate::design::{Design, TileBand};

/// The tile band at the top of every face that is not a wall.
///
/// Invariant: rows come from the top down, a joint apart; `foot` is a joint below the last one.
#[derive(Clone, Debug, PartialEq)]
pub struct Band {
    /// The tiles with their bed, on the base coat.
    pub layer: Layer,
    /// Lower and upper edge of each row above the datum, millimetres.
    pub rows: Vec<(f64, f64)>,
    /// Where the finish coat stops.
    pub foot: f64,
}

/// A tile smaller than this is a mistake, millimetres.
const SMALLEST_TILE: f64 = 2.0;

impl Band {
    /// The band that a design asks for; `None` without one.
    ///
    /// It holds as many whole rows as fit into the height asked for; when not even one does, one row of tiles cut to
    /// that height.
    pub fn of(design: &Design, levels: &PlanLevels) -> Option<Self> {
        let asked = design.tile_band.as_ref()?;
        let rows = rows(asked, levels);
        let foot = rows.last()?.0 - asked.joint.mm();
        Some(Self {
            layer: Layers::of(&design.trade)
                .base
                .followed_by(asked.tile_thickness.value),
            rows,
            foot,
        })
    }
}

fn rows(asked: &TileBand, levels: &PlanLevels) -> Vec<(f64, f64)> {
    let (tile, joint) = (asked.tile_height.mm(), asked.joint.mm());
    let most = levels.frame_top - levels.frame_bottom;
    let height = asked.height.mm().min(most);
    if tile < SMALLEST_TILE || asked.tile_width.mm() < SMALLEST_TILE || height < SMALLEST_TILE {
        return Vec::new();
    }
    // A height that is whole rows must not lose one to the last bit.
    let count = ((height + joint + 1e-6) / (tile + joint)).floor();
    if count < 1.0 {
        return vec![(levels.frame_top - height, levels.frame_top)];
    }
    (0..count as usize)
        .map(|i| {
            let top = levels.frame_top - i as f64 * (tile + joint);
            (top - tile, top)
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::{Placed, TileBand};
    use crate::units::Length;

    fn band(height: f64) -> Vec<(f64, f64)> {
        let mm = |v| Placed {
            value: Length::millimetres(v),
            ..Placed::default()
        };
        let asked = TileBand {
            height: mm(height),
            tile_width: mm(100.0),
            tile_height: mm(100.0),
            tile_thickness: mm(12.0),
            joint: mm(3.0),
        };
        let levels = PlanLevels {
            frame_bottom: 50.0,
            frame_top: 850.0,
            slab_bottom: 862.0,
            counter_top: 912.0,
        };
        rows(&asked, &levels)
    }

    #[test]
    fn rows_are_whole_from_the_top() {
        assert_eq!(band(100.0), [(750.0, 850.0)]);
        assert_eq!(band(202.9), [(750.0, 850.0)]);
        assert_eq!(band(203.0), [(750.0, 850.0), (647.0, 747.0)]);
    }

    #[test]
    fn a_band_lower_than_a_tile_is_one_cut_row() {
        assert_eq!(band(60.0), [(790.0, 850.0)]);
        assert!(band(0.0).is_empty());
    }
}
