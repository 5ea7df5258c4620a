//! Sleepers: the strips that lift the bottom tracks off the ground.

use super::mark::Marks;
use super::stand::{level, stand};
use crate::geometry::{Outline, Region, Solid};
use crate::parts::{Group, Part, PartKind, Piece, SolidId};
use crate::plan::Plan;
use crate::units::Length;

/// The sleeper under a panel, where the plan has it.
pub(super) fn sleeper(plan: &Plan, number: usize, marks: &mut Marks) -> Option<Piece> {
    let trade = &plan.design.trade;
    let (width, height) = (trade.sleeper_width.mm(), trade.sleeper_height.mm());
    let (lies, panel) = (plan.sleeper(number)?, plan.panels.get(number)?);
    let length = lies.length();
    let kind = PartKind::Sleeper;
    let profile = Region::solid(Outline::rectangle(0.0, 0.0, width, height));
    // x inwards, y up or down, z along: which of the two depends on the panel's hand.
    let x = level(panel.inward);
    let along = level(panel.along);
    let upwards = along.cross(&x).z > 0.0;
    let foot = plan.sizes.frame_bottom - if upwards { height } else { 0.0 };
    let at = panel.point(lies.p.0, lies.inwards.0);
    let placement = stand(at, foot, x, along);
    Some(Piece {
        part: Part {
            mark: marks.next(kind),
            kind,
            group: Group::Framing,
            run: Some(marks.run()),
            face: panel.face,
            material: "rot-proof strip".to_owned(),
            section: format!(
                "{} × {}",
                plan.design
                    .project
                    .units
                    .spell_with_unit(Length::millimetres(width)),
                plan.design
                    .project
                    .units
                    .spell_with_unit(Length::millimetres(height))
            ),
            length: Length::millimetres(length),
            solid: SolidId(0),
            placement,
        },
        solid: Solid::extrusion(profile, length),
    })
}
