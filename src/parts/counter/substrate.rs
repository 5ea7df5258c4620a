//! The substrate.

use crate::geometry::{Placement, Solid};
use crate::parts::{Group, Part, PartKind, Piece, SolidId};
use crate::plan::Plan;
use crate::units::Length;

/// What the counter is cast on: one sheet, as its pieces lie together, on the frame.
pub(super) fn substrate(plan: &Plan) -> Piece {
    let trade = &plan.design.trade;
    let bounds = plan.counter.substrate.outer.bounds();
    let thickness = trade.substrate_thickness.value;
    Piece {
        part: Part {
            mark: "SUBSTRATE".to_owned(),
            kind: PartKind::Substrate,
            group: Group::Counter,
            run: None,
            face: None,
            material: trade.substrate.clone(),
            section: format!(
                "sheet {}",
                plan.design.project.units.spell_with_unit(thickness)
            ),
            length: Length::millimetres(bounds.width().max(bounds.height())),
            solid: SolidId(0),
            placement: Placement::translation(0.0, 0.0, plan.levels.frame_top),
        },
        solid: Solid::extrusion(plan.counter.substrate.clone(), thickness.mm()),
    }
}
