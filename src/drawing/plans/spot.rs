//! A single dimension inside a plan, from one point straight across or up to another.

use crate::drawing::dimension::{Axis, Side, Tier, draw_stack};
use crate::drawing::fit::Fit;
use crate::drawing::page::Page;
use crate::geometry::Point2;
use crate::units::Notation;

/// Where the first dimension line stands off the edge of an axis.
const FIRST: f64 = 10.0;

/// A dimension between two points as built that differ in x only or in y only.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Spot {
    pub from: Point2,
    pub to: Point2,
    /// What `from` stands in line with, where an extension line runs to it.
    pub extended_from: Option<Point2>,
}

/// Draws it; false, and nothing drawn, where its text finds no room or its line would pass a text.
fn draw(page: &mut Page, notation: Notation, fit: &Fit, spot: &Spot) -> bool {
    let Spot { from, to, .. } = *spot;
    let across = (to.x - from.x).abs() > (to.y - from.y).abs();
    let at = fit.point(from);
    let origin = spot.extended_from.map(|p| fit.point(p));
    let sign = match (across, origin) {
        (true, Some(o)) if o.y > at.y => -1.0,
        (false, Some(o)) if o.x < at.x => -1.0,
        _ => 1.0,
    };
    let (side, edge) = match (across, sign > 0.0) {
        (true, true) => (Side::Above, at.y - FIRST),
        (true, false) => (Side::Below, at.y + FIRST),
        (false, true) => (Side::Left, at.x + FIRST),
        (false, false) => (Side::Right, at.x - FIRST),
    };
    let ends = if across {
        [from.x, to.x]
    } else {
        [from.y, to.y]
    };
    let sheet = |v: f64| if across { fit.x(v) } else { fit.y(v) };
    let Some(mut tier) = Tier::new(notation, "", &ends, sheet) else {
        return false;
    };
    tier.bare.clone_from(&tier.stations);
    if let Some(origin) = origin {
        let start = sheet(ends[0]);
        tier.bare.retain(|t| (t - start).abs() > 0.01);
        let out = if across {
            origin.y - edge
        } else {
            edge - origin.x
        };
        tier.from = sign * out;
    }
    page.attempt_clear(|page| draw_stack(page, Axis { side, edge }, &[tier]).1 == 0)
}

/// Draws the first of some dimensions that finds room.
pub(super) fn first_extended(
    page: &mut Page,
    notation: Notation,
    fit: &Fit,
    mut spots: impl Iterator<Item = Spot>,
) -> bool {
    spots.any(|spot| draw(page, notation, fit, &spot))
}

/// Draws the dimension between the first of some pairs of points that finds room.
pub(super) fn draw_first(
    page: &mut Page,
    notation: Notation,
    fit: &Fit,
    places: impl IntoIterator<Item = [Point2; 2]>,
) -> bool {
    let spots = places.into_iter().map(|[from, to]| Spot {
        from,
        to,
        extended_from: None,
    });
    first_extended(page, notation, fit, spots)
}
