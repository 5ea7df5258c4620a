//! What both elevations of a face share: the ground, heights and levels.

use crate::drawing::dimension::{Axis, LevelMark, Side, Tier, draw_levels, draw_stack};
use crate::drawing::fit::Fit;
use crate::drawing::page::Page;
use crate::drawing::{Dash, Layer, Pen};
use crate::geometry::{Bounds2, Point2};
use crate::plan::{Face, Plan};
use crate::units::Length;

/// Room to the right for levels, millimetres.
pub(super) const LEVELS: f64 = 52.0;

/// How far above the highest level its mark may reach, millimetres on the sheet.
pub(super) const RAISED: f64 = 5.0;

/// The levels that every elevation marks.
pub(super) fn draw(page: &mut Page, plan: &Plan, fit: &Fit, edge: f64) {
    let notation = plan.design.project.units;
    let marks: Vec<_> = [
        ("datum", 0.0),
        ("frame top", plan.levels.frame_top),
        ("counter top", plan.levels.counter_top),
    ]
    .into_iter()
    .map(|(name, z)| {
        let sign = if z > 0.0 { "+" } else { "±" };
        LevelMark {
            y: fit.y(z),
            text: format!("{sign}{} {name}", notation.spell(Length::millimetres(z))),
        }
    })
    .collect();
    draw_levels(page, edge, &marks);
}

/// The ground as a heavy line, a little longer than what stands on it.
pub(super) fn draw_ground(page: &mut Page, fit: &Fit, seen: &Bounds2) {
    let y = fit.y(0.0);
    let (from, to) = (
        Point2::new(fit.x(seen.low.x) - 1.2, y),
        Point2::new(fit.x(seen.high.x) + 1.2, y),
    );
    page.line(Layer::Detail, Pen::Heavy, Dash::Solid, from, to);
}

/// Chains of heights to the left: the edges of openings between ground and top, then overall.
pub(super) fn draw_heights(
    page: &mut Page,
    plan: &Plan,
    face: &Face,
    fit: &Fit,
    edge: f64,
    top: f64,
) -> usize {
    let notation = plan.design.project.units;
    let openings = face.openings.iter().flat_map(|o| [o.z0, o.z1]);
    let mut heights: Vec<f64> = [0.0, plan.levels.frame_bottom, top].to_vec();
    heights.extend(openings.filter(|z| *z < top));
    let tiers: Vec<_> = [
        Tier::new(notation, "", &heights, |z| fit.y(z)),
        Tier::new(notation, "", &[0.0, top], |z| fit.y(z)),
    ]
    .into_iter()
    .flatten()
    .collect();
    let axis = Axis {
        side: Side::Left,
        edge,
    };
    draw_stack(page, axis, &tiers).1
}
