//! What of a view lies in a window.

use crate::geometry::{Bounds2, Segment};

/// True for a side that only the window makes.
pub(super) fn on_border(side: &Segment, window: &Bounds2) -> bool {
    let near = |a: f64, b: f64| (a - b).abs() < 1e-3;
    (0..2).any(|axis| {
        [window.low[axis], window.high[axis]]
            .iter()
            .any(|border| near(side.from[axis], *border) && near(side.to[axis], *border))
    })
}
