//! The chains round a plan: each run on its outer side, its depth at a free end, and overall.

use crate::drawing::dimension::{Axis, Side, Tier, draw_stack};
use crate::drawing::fit::{Fit, Margins};
use crate::drawing::lettering;
use crate::drawing::page::{LETTERS, Page};
use crate::geometry::{Bounds2, Point2, Vector2};
use crate::plan::Plan;
use crate::units::Length;
use std::collections::BTreeSet;

/// Between what is drawn and its chains: the room of the marks of faces, sections and edges, millimetres.
const LANE: f64 = 8.0;

/// The room kept free between what is drawn and its chains, on each side of the plan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Lanes {
    below: f64,
    above: f64,
    left: f64,
    right: f64,
}

impl Lanes {
    /// A lane on those sides where what is marked, `own`, reaches as far as what is drawn: elsewhere the marks stand inside.
    pub fn round(own: &Bounds2, drawn: &Bounds2) -> Self {
        let lane = |gap: f64| if gap < 300.0 { LANE } else { 0.0 };
        Self {
            below: lane(own.low.y - drawn.low.y),
            above: lane(drawn.high.y - own.high.y),
            left: lane(own.low.x - drawn.low.x),
            right: lane(drawn.high.x - own.high.x),
        }
    }

    fn at(&self, side: Side) -> f64 {
        match side {
            Side::Below => self.below,
            Side::Above => self.above,
            Side::Left => self.left,
            Side::Right => self.right,
        }
    }
}

/// One chain of a plan, in world coordinates.
#[derive(Clone, Debug)]
pub(super) struct WorldChain {
    /// Which side of the plan it stands on.
    pub side: Side,
    /// What it measures.
    pub name: String,
    /// Points on its stations; only the coordinate along the side counts.
    pub stations: Vec<Point2>,
}

/// The room that chains need on each side: a little where there are none.
pub(super) fn margins(chains: &[WorldChain], lanes: &Lanes) -> Margins {
    let room = |side: Side| {
        let count = chains.iter().filter(|c| c.side == side).count();
        // Letters stand above their lines: on two of the sides that is outwards.
        let letters = if matches!(side, Side::Above | Side::Left) {
            5.0
        } else {
            2.0
        };
        if count == 0 {
            lanes.at(side) + 3.0
        } else {
            lanes.at(side) + 2.0 + 8.0 * count as f64 + letters
        }
    };
    // The names of chains stand past their right or upper ends.
    let names = |sides: [Side; 2], room: f64| {
        let named = chains.iter().filter(|c| sides.contains(&c.side));
        let longest = named
            .map(|c| lettering::width(&c.name, LETTERS))
            .fold(0.0, f64::max);
        room.max(longest + 4.0)
    };
    Margins {
        left: room(Side::Left),
        right: names([Side::Below, Side::Above], room(Side::Right)),
        below: room(Side::Below),
        above: names([Side::Left, Side::Right], room(Side::Above)),
    }
}

/// Draws the chains of a plan beside what is drawn of it; on each side in the order given.
pub(super) fn draw(
    page: &mut Page,
    plan: &Plan,
    fit: &Fit,
    (drawn, lanes): (&Bounds2, &Lanes),
    chains: &[WorldChain],
) -> usize {
    let notation = plan.design.project.units;
    let area = fit.area(drawn);
    let mut unplaced = 0;
    for side in [Side::Below, Side::Above, Side::Left, Side::Right] {
        let level = matches!(side, Side::Below | Side::Above);
        let tiers: Vec<_> = chains
            .iter()
            .filter(|chain| chain.side == side)
            .filter_map(|chain| {
                let along = chain.stations.iter().map(|p| if level { p.x } else { p.y });
                let along: Vec<f64> = along.collect();
                Tier::new(notation, &chain.name, &along, |v| {
                    if level { fit.x(v) } else { fit.y(v) }
                })
            })
            .collect();
        let edge = match side {
            Side::Below => area.low.y - lanes.at(side),
            Side::Above => area.high.y + lanes.at(side),
            Side::Left => area.low.x - lanes.at(side),
            Side::Right => area.high.x + lanes.at(side),
        };
        unplaced += draw_stack(page, Axis { side, edge }, &tiers).1;
    }
    unplaced
}

/// What stands nearer than this to the edge of what is drawn is outermost, millimetres: a frame as measured is off by more than a
/// planned one.
pub(super) fn outermost(plan: &Plan) -> f64 {
    let follows = plan.as_built.as_ref().and_then(|f| f.planned());
    if follows.is_some() { 60.0 } else { 1.0 }
}

/// The side of the plan on which a run's chains stand: where its own long side is the outermost.
pub(super) fn side_of_run(plan: &Plan, run: usize, bounds: &Bounds2) -> Side {
    let (own, along) = (plan.runs[run].bounds(), plan.runs[run].along);
    let near = |a: f64, b: f64| (a - b).abs() < outermost(plan);
    if along.x.abs() > 0.5 {
        if near(own.low.y, bounds.low.y) || !near(own.high.y, bounds.high.y) {
            Side::Below
        } else {
            Side::Above
        }
    } else if near(own.high.x, bounds.high.x) {
        Side::Right
    } else {
        Side::Left
    }
}

/// The side of the plan that a direction points to.
pub(super) fn side_towards(direction: Vector2) -> Side {
    match (direction.x, direction.y) {
        (x, _) if x > 0.5 => Side::Right,
        (x, _) if x < -0.5 => Side::Left,
        (_, y) if y > 0.5 => Side::Above,
        _ => Side::Below,
    }
}

/// The two overall chains of a box, on the sides where the first chains across and up stand.
pub(super) fn overall(chains: &[WorldChain], name: &str, bounds: &Bounds2) -> [WorldChain; 2] {
    let first = |sides: [Side; 2], otherwise: Side| {
        let mut used = chains.iter().map(|c| c.side).filter(|s| sides.contains(s));
        used.next().unwrap_or(otherwise)
    };
    [
        first([Side::Below, Side::Above], Side::Below),
        first([Side::Left, Side::Right], Side::Left),
    ]
    .map(|side| WorldChain {
        side,
        name: name.to_owned(),
        stations: vec![bounds.low, bounds.high],
    })
}

/// How deep a run is that has another at both its ends: along the run before it, from that run's start to the inside corner
/// and on to its end. `out` is how far faces stand outside the frame; `ends` is where the chain begins and ends. The other
/// runs' depths are measured at their free ends.
pub(super) fn inside_corner(
    plan: &Plan,
    number: usize,
    out: f64,
    ends: [Point2; 2],
) -> Option<Vec<Point2>> {
    let run = plan.runs.get(number)?;
    let (next, _) = (plan.runs.get(number + 1)?, plan.runs.get(number + 2)?);
    let u = [0.0, next.depth].map(|v| run.local(next.point(0.0, v)).x);
    let corner = u[0].min(u[1]) - out;
    (corner > 1.0).then(|| ends.into_iter().chain([run.point(corner, 0.0)]).collect())
}

fn opposite(side: Side) -> Side {
    match side {
        Side::Below => Side::Above,
        Side::Above => Side::Below,
        Side::Left => Side::Right,
        Side::Right => Side::Left,
    }
}

/// The chains without those that measure the same on the same side: the first of them stays.
pub(super) fn merged(plan: &Plan, chains: Vec<WorldChain>) -> Vec<WorldChain> {
    let notation = plan.design.project.units;
    let steps = |chain: &WorldChain| {
        let level = matches!(chain.side, Side::Below | Side::Above);
        let along = chain.stations.iter().map(|p| if level { p.x } else { p.y });
        let steps = along.map(|v| notation.steps(Length::millimetres(v)));
        steps.collect::<BTreeSet<i64>>()
    };
    let mut said = BTreeSet::new();
    let mut is_new = |chain: &WorldChain| {
        let steps = steps(chain);
        // An overall length is said once, on one side or the other.
        let whole = chain.stations.len() == 2;
        let there = whole && said.contains(&(opposite(chain.side), steps.clone()));
        !there && said.insert((chain.side, steps))
    };
    chains.into_iter().filter(|chain| is_new(chain)).collect()
}
