//! Boards and coats by face.

use super::tally::{Tally, area, many, volume};
use crate::catalog::Need;
use crate::parts::PartKind;
use crate::plan::Face;

/// Of each clad face: board, base coat and finish coat by area, both coats by volume, bonding adhesive.
pub(super) fn reckon(tally: &mut Tally) {
    for (index, face) in tally.clad() {
        layer(tally, index, face, PartKind::Board, Need::Board, false);
        layer(tally, index, face, PartKind::BaseCoat, Need::BaseCoat, true);
        layer(
            tally,
            index,
            face,
            PartKind::FinishCoat,
            Need::FinishCoat,
            true,
        );
        let base: f64 = tally
            .on_face(PartKind::BaseCoat, index)
            .map(|p| tally.area(p))
            .sum();
        let at = tally.at_face(index);
        tally.add(
            Some(Need::BondingAdhesive),
            "bonding adhesive",
            at,
            area(base),
            "the area of the base coat, once",
        );
    }
}

/// The area of one layer, and its volume where it is mixed.
fn layer(tally: &mut Tally, index: usize, face: &Face, kind: PartKind, need: Need, mixed: bool) {
    let pieces: Vec<_> = tally.on_face(kind, index).collect();
    let whole: f64 = pieces.iter().map(|p| tally.area(p)).sum();
    let height = tally.plan.levels.frame_top - tally.plan.levels.frame_bottom;
    let holes = match face.openings.len() {
        0 => String::new(),
        n => format!(" less {}", many(n, "opening")),
    };
    let reckoned = format!(
        "frame face {} × {}{holes}: exact areas of {}, laps at the corners in{}",
        tally.spell(face.length),
        tally.spell(height),
        many(pieces.len(), "piece"),
        beside(kind)
    );
    let at = tally.at_face(index);
    tally.add(Some(need.clone()), kind.name(), at, area(whole), reckoned);
    let thickness = pieces.first().map_or("", |p| p.section.as_str());
    let filled = pieces.iter().map(|p| tally.volume(p)).sum();
    if mixed {
        let item = format!("{}, mixed", kind.name());
        let reckoned = format!("that area, {thickness} thick");
        tally.add(Some(need), &item, at, volume(filled), reckoned);
    }
}

/// What else makes a layer's area differ from the face's.
fn beside(kind: PartKind) -> &'static str {
    match kind {
        PartKind::Board => ", gaps out",
        PartKind::FinishCoat => ", the channel's lip and the tile band out",
        _ => "",
    }
}
