//! Ties, trimmers and the blocking between them.

use super::mark::Marks;
use super::stand::{level, stand};
use super::stock::Stock;
use crate::parts::{PartKind, Piece};
use crate::plan::{Crossing, CrossingKind, Plan};

/// One crossing: a stud section, its web upright and folded onto what it meets at both ends.
///
/// The tabs stay within its own flange, so that neighbours never share a place to be screwed to.
pub(super) fn crossing(plan: &Plan, stock: &Stock, c: &Crossing, marks: &mut Marks) -> Piece {
    let run = &plan.runs[c.run];
    let stud = &stock.stud;
    let (kind, across, along) = match c.kind {
        CrossingKind::Tie => (PartKind::Tie, run.along, run.away),
        CrossingKind::Trimmer => (PartKind::Trimmer, run.along, run.away),
        CrossingKind::Blocking => (PartKind::Blocking, run.away, run.along),
    };
    let (wide, long) = match c.kind {
        CrossingKind::Blocking => (c.v, c.u),
        _ => (c.u, c.v),
    };
    let (web, opens) = if c.web_high {
        (wide.1, -across)
    } else {
        (wide.0, across)
    };
    let at = match c.kind {
        CrossingKind::Blocking => run.point(long.0, web),
        _ => run.point(web, long.0),
    };
    let height = plan.sizes.frame_top - stud.steel.depth.mm() / 2.0;
    let placement = stand(at, height, level(opens), level(along));
    let clear = long.1 - long.0;
    let tab = plan.sizes.tab.min(stud.tab_within_flange());
    let solid = stud.tabbed(|length| stud.punched(length), clear, tab);
    stud.piece(
        kind,
        marks,
        None,
        stud.cut_length(clear, tab),
        (solid, placement),
    )
}
