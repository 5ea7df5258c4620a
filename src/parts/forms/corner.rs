//! Edge forms round eased corners.

use super::cut::{Cut, follows};
use super::maker::{Maker, planes, strips};
use super::section::Strip;
use crate::geometry::{Bend, Outline, Placement, Solid, Vertex};
use crate::parts::Piece;
use crate::plan::{FORM_THICKNESS, SideKind};
use nalgebra::{Translation3, UnitQuaternion, Vector3};

/// The pieces that follow the rounding or the short side at the start of a side; none at a sharp corner.
pub(super) fn pieces(maker: &mut Maker, side: usize) -> Vec<Piece> {
    let plan = maker.plan;
    let counter = &plan.counter;
    let n = counter.sides.len();
    let corner = counter.slab.corner(side);
    let Some(easing) = corner.easing else {
        return Vec::new();
    };
    if counter.sides[(side + n - 1) % n].kind != SideKind::Exposed {
        return Vec::new();
    }
    strips(plan, side)
        .into_iter()
        .filter(|(strip, _)| match strip {
            Strip::Wall => true,
            Strip::Floor => false,
            Strip::Upstand => {
                let inner = counter.turndown_width;
                let room = counter.corner_room(side).unwrap_or(0.0);
                follows(easing.vanishes, inner) && room >= inner + FORM_THICKNESS
            }
        })
        .filter_map(|(strip, section)| {
            if easing.round {
                let profile = about_axis(&section, easing.vanishes);
                let bounds = profile.bounds();
                let spoke = easing.first - easing.centre;
                let placement = Placement::from_parts(
                    Translation3::new(easing.centre.x, easing.centre.y, plan.levels.slab_bottom),
                    UnitQuaternion::from_axis_angle(&Vector3::z_axis(), spoke.y.atan2(spoke.x)),
                );
                let name = format!("{}, bent", strip.name());
                let size = (bounds.width(), bounds.height());
                let length = bounds.high.x * corner.turn;
                let solid = Solid::Bend(Bend {
                    profile,
                    angle: corner.turn,
                });
                return Some(maker.piece(side, &name, size, length, placement, solid));
            }
            let short = easing.last - easing.first;
            let inward = crate::geometry::Vector2::new(-short.y, short.x).normalize();
            let mitre = Cut {
                offset: 0.0,
                slope: (corner.turn / 4.0).tan(),
            };
            let cuts = planes(short.norm(), mitre, mitre);
            maker.straight(side, strip.name(), section, (easing.first, inward), cuts)
        })
        .collect()
}

/// A section with its distance from a rounding's axis in place of its inset.
fn about_axis(section: &Outline, radius: f64) -> Outline {
    let turned = section
        .vertices()
        .iter()
        .map(|v| Vertex::bent(radius - v.at.x, v.at.y, -v.bulge));
    Outline::new(turned.collect())
}
