//! The room that an eased corner leaves in front of the finished faces' corner.

use super::CounterSide;
use crate::geometry::Slab;

/// How far the counter passes the corner of the finished faces (or their tile) at the eased corner where side `i` starts,
/// square to its line; `None` at a sharp corner, or where what is below stands out past the counter anyway.
pub(super) fn corner_room(slab: &Slab, sides: &[CounterSide], i: usize) -> Option<f64> {
    let corner = slab.corner(i);
    let easing = corner.easing.filter(|_| corner.is_convex())?;
    let before = sides.get((i + sides.len() - 1) % sides.len())?.room;
    let after = sides.get(i)?.room;
    if before < 0.0 || after < 0.0 {
        return None;
    }
    let below = corner.meet(before, after);
    let square = before.min(after);
    let eased = if !easing.round {
        let short = (easing.last - easing.first).normalize();
        short.perp(&(below - easing.first))
    } else if before.max(after) < easing.vanishes {
        easing.vanishes - (below - easing.centre).norm()
    } else {
        square
    };
    Some(square.min(eased))
}
