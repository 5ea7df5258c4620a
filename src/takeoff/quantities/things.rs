//! What is listed from the file: appliances, and what fills the openings.

use super::tally::{At, Tally, count};
use crate::catalog::Need;
use crate::design::OpeningKind;

/// One of each appliance and of each opening's filling, by name.
pub(super) fn reckon(tally: &mut Tally) {
    let plan = tally.plan;
    for cutout in &plan.cutouts {
        let Some(appliance) = plan.design.appliances.get(cutout.appliance) else {
            continue;
        };
        let reckoned = format!(
            "{}, drops into a cutout {} × {}",
            appliance.kind,
            tally.spell(appliance.cutout_width.mm()),
            tally.spell(appliance.cutout_depth.mm())
        );
        let need = Need::Thing(appliance.name.clone());
        tally.add(
            Some(need),
            &appliance.name,
            At::run(cutout.run),
            count(1),
            reckoned,
        );
    }
    for (index, face) in plan.faces.iter().enumerate() {
        for opening in &face.openings {
            let Some(kind) = opening.kind else { continue };
            let size = format!(
                "{} × {}",
                tally.spell(opening.s1 - opening.s0),
                tally.spell(opening.z1 - opening.z0)
            );
            let reckoned = match kind {
                OpeningKind::Receptacle => format!("receptacle box with its cover, {size}"),
                _ => format!("{} for an opening {size}", kind.name()),
            };
            let need = Need::Thing(opening.name.clone());
            tally.add(
                Some(need),
                &opening.name,
                tally.at_face(index),
                count(1),
                reckoned,
            );
        }
    }
}
