//! The slab.

use crate::geometry::{Placement, Solid};
use crate::parts::{Group, Part, PartKind, Piece, SolidId};
use crate::plan::Plan;
use crate::units::Length;

/// The counter as one solid, turndown and cutouts included.
pub(super) fn slab(plan: &Plan) -> Piece {
    let bounds = plan.counter.outline.bounds();
    let thickness = plan.design.counter.thickness.value;
    Piece {
        part: Part {
            mark: "SLAB".to_owned(),
            kind: PartKind::Slab,
            group: Group::Counter,
            run: None,
            face: None,
            material: plan.design.trade.slab_mix.clone(),
            section: format!(
                "slab {}",
                plan.design.project.units.spell_with_unit(thickness)
            ),
            length: Length::millimetres(bounds.width().max(bounds.height())),
            solid: SolidId(0),
            placement: Placement::translation(0.0, 0.0, plan.levels.slab_bottom),
        },
        solid: Solid::Slab(plan.counter.slab.clone()),
    }
}
