//! Notches of open fronts.

use super::{LEAST_RAIL, spell};
use crate::design::Design;
use crate::diagnostics::Finding;
use crate::geometry::CornerShape;
use crate::plan::counter::SideKind;
use crate::plan::counter::layout::drop_of;
use crate::plan::counter::side::ShapedSide;
use crate::plan::{Cutout, Face};

/// A notch must leave a piece of the front edge on both its sides.
pub(in crate::plan::counter) fn notches(
    design: &Design,
    sides: &[ShapedSide],
    faces: &[Face],
    cutouts: &[Cutout],
    findings: &mut Vec<Finding>,
) {
    let n = sides.len();
    let width = drop_of(design).map_or(0.0, |d| d.1);
    for (i, s) in sides.iter().enumerate() {
        let (before, next) = (&sides[(i + n - 1) % n], &sides[(i + 1) % n]);
        let notch = [before, next].into_iter().find_map(|b| match b.side.kind {
            SideKind::Notch(a) if !matches!(s.side.kind, SideKind::Notch(_)) => Some(a),
            _ => None,
        });
        let Some(appliance) = notch else { continue };
        let a = &design.appliances[appliance];
        if s.side.kind == SideKind::Wall {
            findings.push(
                Finding::error(
                    "plan-notch",
                    &a.place,
                    format!("the front of '{}' would open into a wall", a.name),
                )
                .hint("give it a closed front"),
            );
            continue;
        }
        let taken: f64 = [(before, s), (s, next)]
            .into_iter()
            .map(|(first, second)| match second.shape {
                CornerShape::Rounded(leg) | CornerShape::Chamfered(leg) => leg.max(width),
                CornerShape::Sharp if first.side.dropped && second.side.dropped => width,
                CornerShape::Sharp => 0.0,
            })
            .sum();
        let along = (s.side.end - s.side.start).dot(&faces[s.side.face].along);
        if along < taken + LEAST_RAIL {
            findings.push(
                Finding::error(
                    "plan-notch",
                    &a.station.place,
                    format!(
                        "the open front of '{}' leaves {} of the counter's front edge beside it",
                        a.name,
                        spell(design, along.max(0.0))
                    ),
                )
                .hint(format!(
                    "move it so that {} or more is left",
                    spell(design, taken + LEAST_RAIL)
                )),
            );
        }
    }
    for c in cutouts.iter().filter(|c| c.open) {
        let a = &design.appliances[c.appliance];
        let least = (c.u1 - c.u0).min(c.v1 - c.v0);
        if c.radius > 0.0 && 2.0 * c.radius > least - 1.0 {
            findings.push(
                Finding::error(
                    "plan-notch",
                    &a.corner_radius.place,
                    format!(
                        "the corners of the cutout of '{}' are too large for it",
                        a.name
                    ),
                )
                .hint("the radius must be less than half the cutout's width and depth"),
            );
        }
    }
}
