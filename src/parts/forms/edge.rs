//! Straight edge forms along the sides.

use super::cut::cut;
use super::maker::{Maker, planes, strips};
use super::section::has_upstand;
use crate::geometry::{EndPlane, Outline};
use crate::parts::Piece;
use crate::plan::{FORM_THICKNESS, SideKind};

/// The strips of one exposed side.
pub(super) fn pieces(maker: &mut Maker, side: usize) -> Vec<Piece> {
    let counter = &maker.plan.counter;
    let n = counter.sides.len();
    let (before, next) = ((side + n - 1) % n, (side + 1) % n);
    let (start, end) = (counter.slab.corner(side), counter.slab.corner(next));
    let length = counter.sides[side].length();
    let plan = maker.plan;
    strips(plan, side)
        .into_iter()
        .filter_map(|(strip, section)| {
            let cuts = planes(
                length,
                cut(plan, &start, [side, before], strip),
                cut(plan, &end, [side, next], strip),
            );
            maker.straight(side, strip.name(), section, (start.at, start.after), cuts)
        })
        .collect()
}

/// The stops that close the ends of a turndown in the notch of an open front.
pub(super) fn stops(maker: &mut Maker, side: usize) -> Vec<Piece> {
    let plan = maker.plan;
    let counter = &plan.counter;
    let n = counter.sides.len();
    if !counter.sides[side].dropped {
        return Vec::new();
    }
    let notch = |i: usize| matches!(counter.sides[i % n].kind, SideKind::Notch(_));
    let length = counter.sides[side].length();
    let corner = counter.slab.corner(side);
    let upstand = if has_upstand(plan, side) {
        FORM_THICKNESS
    } else {
        0.0
    };
    let reach = (counter.turndown_width + upstand).min(counter.sides[side].room);
    let section = Outline::rectangle(-FORM_THICKNESS, -counter.turndown_depth, reach, 0.0);
    [
        (notch(side + n - 1), -FORM_THICKNESS),
        (notch(side + 1), length),
    ]
    .into_iter()
    .filter(|(there, _)| *there)
    .filter_map(|(_, from)| {
        let cuts = [from, from + FORM_THICKNESS].map(EndPlane::square);
        maker.straight(
            side,
            "turndown stop",
            section.clone(),
            (corner.at, corner.after),
            cuts,
        )
    })
    .collect()
}
