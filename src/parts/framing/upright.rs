//! Studs, jambs and cripples.

use super::mark::Marks;
use super::stand::{level, stand};
use super::stock::Stock;
use crate::geometry::{Solid, Vector3};
use crate::parts::{PartKind, Piece};
use crate::plan::{Panel, Plan, Upright, UprightKind};

/// The uprights of a panel, left to right.
///
/// Studs and jambs stand on their marked end, so that their punch-outs line up; cripples are cut from what lies between
/// punch-outs.
pub(super) fn uprights(plan: &Plan, stock: &Stock, panel: &Panel, marks: &mut Marks) -> Vec<Piece> {
    panel
        .uprights
        .iter()
        .map(|u| upright(plan, stock, panel, u, marks))
        .collect()
}

fn upright(plan: &Plan, stock: &Stock, panel: &Panel, u: &Upright, marks: &mut Marks) -> Piece {
    let length = u.z1 - u.z0;
    let kind = match u.kind {
        UprightKind::Stud => PartKind::Stud,
        UprightKind::Jamb => PartKind::Jamb,
        UprightKind::Cripple => PartKind::Cripple,
    };
    let solid = match u.kind {
        UprightKind::Cripple => stock.stud.straight(length),
        _ => stock.stud.punched(length),
    };
    let (web, opens) = if u.web_high {
        (u.p1, -panel.along)
    } else {
        (u.p0, panel.along)
    };
    let at = panel.point(web, plan.sizes.panel / 2.0);
    let placement = stand(at, u.z0, level(opens), Vector3::z());
    stock.stud.piece(
        kind,
        marks,
        panel.face,
        length,
        (Solid::Extrusion(solid), placement),
    )
}
