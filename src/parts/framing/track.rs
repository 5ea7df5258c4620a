//! Bottom and top tracks, and blocking of track behind board joints.

use super::mark::Marks;
use super::stand::{level, stand};
use super::stock::Stock;
use crate::geometry::{Solid, Vector3};
use crate::parts::{PartKind, Piece};
use crate::plan::{Panel, Plan};

/// The tracks and the blocking of a panel.
pub(super) fn tracks(plan: &Plan, stock: &Stock, panel: &Panel, marks: &mut Marks) -> Vec<Piece> {
    let mut found = Vec::new();
    let along = level(panel.along);
    let rows = [
        (
            PartKind::BottomTrack,
            &panel.bottom,
            plan.sizes.frame_bottom,
            Vector3::z(),
        ),
        (
            PartKind::TopTrack,
            &panel.top,
            plan.sizes.frame_top,
            -Vector3::z(),
        ),
    ];
    let mut add = |kind, length: f64, placement| {
        let solid = Solid::Extrusion(stock.track.straight(length));
        found.push(
            stock
                .track
                .piece(kind, marks, panel.face, length, (solid, placement)),
        );
    };
    for (kind, pieces, height, up) in rows {
        for &(p0, p1) in pieces {
            let at = panel.point(p0, plan.sizes.panel / 2.0);
            add(kind, p1 - p0, stand(at, height, up, along));
        }
    }
    for &(p0, p1, z) in &panel.blocking {
        let at = panel.point(p0, 0.0);
        add(
            PartKind::Blocking,
            p1 - p0,
            stand(at, z, level(panel.inward), along),
        );
    }
    found
}
