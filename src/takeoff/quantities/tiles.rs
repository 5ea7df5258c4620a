//! Tiles, thinset and grout by face.

use super::tally::{Tally, area, count, volume};
use crate::catalog::Need;
use crate::geometry::{Outline, Region};
use crate::parts::PartKind;
use crate::plan::{Band, FaceOpening};

/// Whole and cut tiles, the bed's area, and the joints' volume.
pub(super) fn reckon(tally: &mut Tally) {
    let plan = tally.plan;
    let asked = plan.design.tile_band.as_ref();
    let Some((asked, band)) = asked.zip(Band::of(&plan.design, &plan.levels)) else {
        return;
    };
    let whole_area = asked.tile_width.mm() * asked.tile_height.mm();
    for (index, face) in tally.clad() {
        let tiles: Vec<f64> = tally
            .on_face(PartKind::Tile, index)
            .map(|p| tally.area(p))
            .collect();
        let whole = tiles.iter().filter(|a| **a > whole_area - 1.0).count();
        let cut = tiles.len() - whole;
        let at = tally.at_face(index);
        let reckoned = format!("{whole} whole and {cut} cut, each cut one from a tile of its own");
        tally.add(Some(Need::Tile), "tile", at, count(tiles.len()), reckoned);
        let covered: f64 = tiles.iter().sum();
        let reckoned = "the area of the tiles, whole and cut";
        tally.add(Some(Need::Thinset), "thinset", at, area(covered), reckoned);
        let ends = band.layer.ends(&plan.faces, index);
        let holes: Vec<_> = face.openings.iter().map(FaceOpening::outline).collect();
        let field = Outline::rectangle(ends.0, band.foot, ends.1, plan.levels.frame_top);
        let field: f64 = Region::solid(field)
            .minus(&holes)
            .iter()
            .map(Region::area)
            .sum();
        let joints = (field - covered).max(0.0) * band.layer.thickness();
        let reckoned = format!(
            "the band less its tiles, {} deep",
            tally.spell(band.layer.thickness())
        );
        tally.add(Some(Need::Grout), "grout", at, volume(joints), reckoned);
    }
}
