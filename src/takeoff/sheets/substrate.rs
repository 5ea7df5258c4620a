//! The substrate in pieces that can be laid.

use super::joints::{Cost, Place, Support, joints};
use super::list::shares_board;
use super::piece::{SheetPiece, cut_outs};
use super::stock::{StockSheet, stock};
use super::zones::{shares, within};
use crate::catalog::Need;
use crate::geometry::{Bounds2, Outline, Point2, Region};
use crate::parts::{Assembly, PartKind};
use crate::plan::{CrossingKind, PanelOf, Plan};

/// Nobody lays a counter on smaller sheets, millimetres: pieces of such a one are said to be too large.
const LEAST_SHEET: f64 = 200.0;

/// The substrate as it is laid.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::takeoff) struct Laid {
    /// The pieces in the world.
    pub pieces: Vec<SheetPiece>,
    /// How much joint of each run lies on nothing, millimetres.
    pub unsupported: Vec<f64>,
}

/// The substrate as it is laid of the sheets that are sold: its pieces run by run, each run from left to right.
///
/// No piece is larger than a sheet where joints can help it, and joints lie on ties, bulkheads, trimmers and panels where
/// there are any.
pub(super) fn as_laid(plan: &Plan, assembly: &Assembly) -> Laid {
    let need = if shares_board(&plan.design) {
        Need::Board
    } else {
        Need::Substrate
    };
    laid(plan, assembly, &stock(&plan.design, &need))
}

fn laid(plan: &Plan, assembly: &Assembly, stock: &[StockSheet]) -> Laid {
    let mut unsupported = vec![0.0; plan.runs.len()];
    let notation = plan.design.project.units;
    let parts = assembly.parts.iter().enumerate();
    let Some((number, part)) = parts
        .into_iter()
        .find(|(_, p)| p.kind == PartKind::Substrate)
    else {
        return Laid {
            pieces: Vec::new(),
            unsupported,
        };
    };
    let turns = may_turn(plan);
    let mut found: Vec<SheetPiece> = Vec::new();
    for (run, share) in shares(plan).iter().enumerate() {
        for (region, bare) in parted(plan, run, share, stock) {
            unsupported[run] += bare.unwrap_or(0.0);
            let bounds = region.outer.bounds();
            let sides = (bounds.width(), bounds.height());
            let block = bare.map(|_| "put blocking under its joint");
            let cut = cut_outs(&region);
            let cut = (!cut.is_empty()).then_some(cut.as_str());
            let motion = plan.runs[run].motion();
            found.push(SheetPiece {
                mark: format!("{}-{}", part.mark, found.len() + 1),
                run: Some(run),
                may_turn: turns,
                note: cut.into_iter().chain(block).collect::<Vec<_>>().join("; "),
                region: Some(Region {
                    outer: region.outer.moved(&motion),
                    holes: region.holes.iter().map(|h| h.moved(&motion)).collect(),
                }),
                ..SheetPiece::of(notation, (number, part), sides)
            });
        }
    }
    Laid {
        pieces: found,
        unsupported,
    }
}

/// Cement board carries alike both ways; any other sheet is laid with its grain along the run, across the ties.
fn may_turn(plan: &Plan) -> bool {
    plan.design
        .trade
        .substrate
        .to_lowercase()
        .contains("cement")
}

/// The pieces of a run's share in the run's own coordinates, and where one of their joints lies on nothing, how
/// long those at their right and far edges are: each joint once.
fn parted(
    plan: &Plan,
    run: usize,
    share: &[Region],
    stock: &[StockSheet],
) -> Vec<(Region, Option<f64>)> {
    let back = plan.runs[run].motion().inverse();
    let local: Vec<_> = share
        .iter()
        .map(|r| Region {
            outer: r.outer.moved(&back),
            holes: r.holes.iter().map(|h: &Outline| h.moved(&back)).collect(),
        })
        .collect();
    let boxes = local.iter().map(|r| r.outer.bounds());
    let Some(whole) = boxes.reduce(Bounds2::union) else {
        return Vec::new();
    };
    let [across, along] = rows(plan, run, whole, stock);
    let mut found = Vec::new();
    for u in along.windows(2) {
        for v in across.windows(2) {
            let cell = Bounds2 {
                low: Point2::new(u[0].at, v[0].at),
                high: Point2::new(u[1].at, v[1].at),
            };
            let edges = [u[0], u[1], v[0], v[1]];
            let unsupported = edges.iter().any(|p| p.on == Support::Nothing);
            let high = [(0, u[1]), (1, v[1])];
            let bare = |r: &Region| -> f64 {
                let lines = high.iter().filter(|(_, p)| p.on == Support::Nothing);
                lines.map(|(axis, p)| along_edge(r, *axis, p.at)).sum()
            };
            let parts = local.iter().flat_map(|r| within(r, cell));
            found.extend(parts.map(|r| {
                let bare = unsupported.then(|| bare(&r));
                (r, bare)
            }));
        }
    }
    found.retain(|(r, _)| r.area() > 1e-3);
    found
}

/// How much of a region ends at a line across an axis, millimetres: the area of its last hundredth.
fn along_edge(region: &Region, axis: usize, at: f64) -> f64 {
    const THIN: f64 = 0.01;
    let mut sliver = region.outer.bounds();
    sliver.low[axis] = at - THIN;
    sliver.high[axis] = at;
    region.area_within(&sliver) / THIN
}

/// The lines that part a run across and along it, both ends among them: for the sheet and the way of laying it that needs
/// the fewest joints.
fn rows(plan: &Plan, run: usize, whole: Bounds2, stock: &[StockSheet]) -> [Vec<Place>; 2] {
    let step = plan.design.project.units.step().mm();
    let turns = may_turn(plan);
    let sheets = stock.iter().flat_map(|s| {
        let side = |steps: u32| (f64::from(steps) * step).max(LEAST_SHEET);
        let (l, w) = (side(s.steps.0), side(s.steps.1));
        [(l, w), (w, l)].into_iter().take(if turns { 2 } else { 1 })
    });
    let (along, across) = (crossing_places(plan, run), panel_places(plan, run));
    let (low, high) = (whole.low, whole.high);
    let ways = sheets.map(|(l, w)| {
        let (u, u_cost) = joints(low.x, high.x, l, &along);
        let (v, v_cost) = joints(low.y, high.y, w, &across);
        (sum(u_cost, v_cost), (v, u))
    });
    let (v, u) = ways
        .min_by_key(|w| w.0)
        .map_or((Vec::new(), Vec::new()), |w| w.1);
    [closed(low.y, v, high.y), closed(low.x, u, high.x)]
}

fn sum(u: Cost, v: Cost) -> (Cost, usize) {
    // A joint along the run is as long as all the pieces of the run: it counts more than one across.
    let pieces = (u.1 + 1) * (v.1 + 1);
    ((u.0 + v.0, pieces, u.2 + v.2, u.3.max(v.3)), v.1)
}

fn closed(from: f64, joints: Vec<Place>, to: f64) -> Vec<Place> {
    let end = |at| Place {
        at,
        on: Support::Steel,
    };
    let mut row = vec![end(from)];
    row.extend(joints);
    row.push(end(to));
    row
}

/// Where joints across a run may lie: on ties in one piece, on bulkheads, and on trimmers.
fn crossing_places(plan: &Plan, run: usize) -> Vec<Place> {
    let clear = plan.runs[run].depth - 2.0 * plan.sizes.panel;
    let crossings = plan.crossings.iter().filter(|c| c.run == run);
    let members = crossings.filter_map(|c| {
        let on = match c.kind {
            CrossingKind::Tie if c.v.1 - c.v.0 > clear - 1.0 => Support::Steel,
            CrossingKind::Trimmer => Support::Edge,
            _ => return None,
        };
        let at = f64::midpoint(c.u.0, c.u.1);
        Some(Place { at, on })
    });
    let panels = plan.panels.iter().filter(|p| p.run == run);
    let bulkheads = panels.filter_map(|p| match p.of {
        PanelOf::Bulkhead(k) => plan.design.runs[run].bulkheads.get(k),
        PanelOf::Side(_) => None,
    });
    members
        .chain(bulkheads.map(|u| Place {
            at: u.mm(),
            on: Support::Steel,
        }))
        .collect()
}

/// Where joints along a run may lie: over the middle of its two long panels.
fn panel_places(plan: &Plan, run: usize) -> Vec<Place> {
    let half = plan.sizes.panel / 2.0;
    [half, plan.runs[run].depth - half]
        .map(|at| Place {
            at,
            on: Support::Steel,
        })
        .to_vec()
}
