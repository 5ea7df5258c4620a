//! Screws through boards and substrate.

use super::super::coverage::boards;
use super::super::tally::{At, Tally, count};
use super::line::{SPACING, Strip, screws};
use crate::catalog::Need;
use crate::design::Side;
use crate::geometry::Bounds2;
use crate::plan::{CrossingKind, PanelOf, Plan, Steel};
use crate::takeoff::asked::{Asked, screw};

/// How far a screw bites beyond the sheet, millimetres: 3/4 in, common practice.
const BITE: f64 = 19.05;
/// A line of screws so near the end of a strip serves as its end, millimetres: 2 in.
const REACH: f64 = 50.8;

/// Boards by face, then substrate by run.
pub(super) fn reckon(tally: &mut Tally) {
    let through = tally.plan.design.trade.board_thickness.mm();
    let length = screw(tally.units(), through, BITE, f64::INFINITY);
    let long = tally.spell(length.mm());
    let spacing = tally.spell(SPACING);
    for (face, _) in tally.clad() {
        let steel: Vec<Strip> = tally.plan.steel_behind(face).iter().map(strip).collect();
        let found = boards(tally, face)
            .iter()
            .flat_map(|b| screws(b, &steel, REACH))
            .sum();
        let reckoned = format!(
            "each board on every piece of steel behind it at {spacing} at most, once where two lines meet; {long} long"
        );
        let at = tally.at_face(face);
        tally.add(
            Asked::long(Need::BoardScrew, length),
            "board screw, boards",
            at,
            count(found),
            reckoned,
        );
    }
    substrate(tally);
}

fn strip(steel: &Steel) -> Strip {
    let (s, z) = ((steel.s0, steel.s1), (steel.z0, steel.z1));
    Strip {
        axis: usize::from(steel.upright),
        span: if steel.upright { z } else { s },
        width: if steel.upright { s } else { z },
        first: steel.upright,
    }
}

fn substrate(tally: &mut Tally) {
    let plan = tally.plan;
    let through = plan.design.trade.substrate_thickness.mm();
    let length = screw(tally.units(), through, BITE, f64::INFINITY);
    let long = tally.spell(length.mm());
    let spacing = tally.spell(SPACING);
    let strips = under_counter(plan);
    let reach = plan.sizes.panel / 2.0 + REACH / 10.0;
    let pieces = &tally.laying.substrate.pieces;
    for run in 0..plan.runs.len() {
        let own = pieces.iter().filter(|p| p.run == Some(run));
        let regions = own.filter_map(|p| p.region.as_ref());
        let found = regions.flat_map(|r| screws(r, &strips, reach)).sum();
        let reckoned = format!(
            "top tracks, ties, trimmers and blocking at {spacing} at most, each piece by itself; {long} long"
        );
        tally.add(
            Asked::long(Need::BoardScrew, length),
            "board screw, substrate",
            At::run(run),
            count(found),
            reckoned,
        );
    }
}

/// The steel under the counter in the world: long top tracks first, the rest between them.
fn under_counter(plan: &Plan) -> Vec<Strip> {
    let mut found = Vec::new();
    for panel in &plan.panels {
        let long = matches!(panel.of, PanelOf::Side(Side::Working | Side::Seating));
        let axis = usize::from(panel.along.y.abs() > 0.5);
        for (p0, p1) in &panel.top {
            let ends = [panel.point(*p0, 0.0), panel.point(*p1, plan.sizes.panel)];
            let bounds = Bounds2 {
                low: ends[0].inf(&ends[1]),
                high: ends[0].sup(&ends[1]),
            };
            found.push(lying(&bounds, axis, long));
        }
    }
    for crossing in &plan.crossings {
        let run = &plan.runs[crossing.run];
        let along = match crossing.kind {
            CrossingKind::Blocking => run.along,
            CrossingKind::Tie | CrossingKind::Trimmer => run.away,
        };
        let axis = usize::from(along.y.abs() > 0.5);
        let bounds = run.rectangle(crossing.u, crossing.v);
        found.push(lying(&bounds, axis, false));
    }
    found
}

fn lying(bounds: &Bounds2, axis: usize, first: bool) -> Strip {
    let across = 1 - axis;
    Strip {
        axis,
        span: (bounds.low[axis], bounds.high[axis]),
        width: (bounds.low[across], bounds.high[across]),
        first,
    }
}
