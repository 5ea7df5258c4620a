//! Base coat and finish coat.

use super::OnFace;
use super::channel::LIP;
use crate::geometry::{Outline, Region};
use crate::parts::{Group, PartKind, Piece};
use crate::plan::{FaceOpening, Layer};
use crate::units::Length;

/// The base coat of one face, from the base channel to the top of the frame.
pub(super) fn base_coat(on: &OnFace) -> Vec<Piece> {
    let heights = (on.levels.frame_bottom, on.levels.frame_top);
    coat(
        on,
        on.layers.base,
        heights,
        PartKind::BaseCoat,
        "base coat",
        "BC",
    )
}

/// The finish coat of one face, from the lip of the base channel to the tile band.
pub(super) fn finish_coat(on: &OnFace) -> Vec<Piece> {
    let lip = if on.has_lip() { LIP } else { 0.0 };
    let top = on.band.as_ref().map_or(on.levels.frame_top, |b| b.foot);
    let heights = (on.levels.frame_bottom + lip, top);
    coat(
        on,
        on.layers.finish,
        heights,
        PartKind::FinishCoat,
        "finish coat",
        "FC",
    )
}

/// One layer with the openings cut out; a coat of no thickness is none. Pieces are numbered when there are several.
fn coat(
    on: &OnFace,
    layer: Layer,
    heights: (f64, f64),
    kind: PartKind,
    name: &str,
    letters: &str,
) -> Vec<Piece> {
    let ends = on.ends(layer);
    if layer.thickness() < 1e-6 || heights.1 - heights.0 < 1e-6 || ends.1 - ends.0 < 1e-6 {
        return Vec::new();
    }
    let thickness = Length::millimetres(layer.thickness());
    let section = format!(
        "{name} {}",
        on.design.project.units.spell_with_unit(thickness)
    );
    let plate = on.plate(kind, Group::Coats, "stucco", section);
    let whole = Outline::rectangle(ends.0, heights.0, ends.1, heights.1);
    let openings: Vec<_> = on
        .face()
        .openings
        .iter()
        .map(FaceOpening::outline)
        .collect();
    let regions = Region::solid(whole).minus(&openings);
    let several = regions.len() > 1;
    regions
        .iter()
        .zip(1..)
        .map(|(region, number)| {
            let letters = if several {
                format!("{letters}{number}")
            } else {
                letters.to_owned()
            };
            plate.piece(on.mark(&letters), region, layer)
        })
        .collect()
}
