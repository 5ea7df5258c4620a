//! A single dimension inside a plan, from one point straight across or up to another.

use crate::drawing::dimension::{Axis, Side, Tier, draw_stack};
use crate::drawing::fit::Fit;
use crate::drawing::page::Page;
use crate::geometry::Point2;
use crate::units::Notation;

/// Where the first dimension line stands off the edge of an axis.
const FIRST: f64 = 10.0;

/// Draws the dimension between two points as built that differ in x only or in y only; false, and nothing drawn, where
/// its text finds no room or its line would pass a text.
pub(super) fn draw(
    page: &mut Page,
    notation: Notation,
    fit: &Fit,
    from: Point2,
    to: Point2,
) -> bool {
    let across = (to.x - from.x).abs() > (to.y - from.y).abs();
    let at = fit.point(from);
    let (side, edge, ends) = if across {
        (Side::Above, at.y - FIRST, [from.x, to.x])
    } else {
        (Side::Left, at.x + FIRST, [from.y, to.y])
    };
    let sheet = |v: f64| if across { fit.x(v) } else { fit.y(v) };
    let Some(mut tier) = Tier::new(notation, "", &ends, sheet) else {
        return false;
    };
    tier.bare.clone_from(&tier.stations);
    let mut tried = page.clone();
    let lettered = draw_stack(&mut tried, Axis { side, edge }, &[tier]).1 == 0;
    let drawn = lettered && tried.keeps_clear_of(page);
    if drawn {
        *page = tried;
    }
    drawn
}

/// The first of some places at which the dimension finds room.
pub(super) fn draw_first(
    page: &mut Page,
    notation: Notation,
    fit: &Fit,
    places: impl IntoIterator<Item = [Point2; 2]>,
) -> bool {
    places
        .into_iter()
        .any(|[from, to]| draw(page, notation, fit, from, to))
}
