//! The tile band under the counter.

use super::content::{Chain, Content, Extra, Note, Stuff, Window};
use super::places::Spot;
use super::plane;
use super::words::Words;
use crate::drawing::dimension::Side;
use crate::geometry::{Bounds2, Outline, Point2};
use crate::parts::{Group, PartKind};
use crate::plan::{Band, Layers, Plan};

/// The legs of the bead of sealant, millimetres (common practice).
const BEAD: f64 = 6.0;

/// The band from its foot to the counter, cut beside a stud.
pub(super) fn content(plan: &Plan, spot: Spot) -> Option<Content> {
    let face = plan.faces.get(spot.face)?;
    let band = Band::of(&plan.design, &plan.levels)?;
    let words = Words(plan);
    let (out, top) = (band.layer.outer, plan.levels.frame_top);
    let clad = Layers::of(&plan.design.trade).finish.outer.max(out);
    let bead = Outline::polygon(&[
        Point2::new(-out, top),
        Point2::new(-out - BEAD, top),
        Point2::new(-out, top - BEAD),
    ]);
    let rows = band.rows.iter().flat_map(|r| [r.0, r.1]);
    let heights: Vec<f64> = rows.chain([band.foot]).collect();
    let mut notes = vec![
        Note::on(PartKind::Substrate, words.substrate()),
        Note::at(
            &[(-out - BEAD / 3.0, top - BEAD / 3.0)],
            "bead of exterior sealant between tile and counter, no mortar: the two move (common practice)".to_owned(),
        ),
        Note::on(PartKind::Tile, words.tile()?),
        Note::at(
            &[(-0.5 * (band.layer.inner + out), band.foot / 2.0 + lowest(&band) / 2.0)],
            "joint under the band: grouted or filled with sealant".to_owned(),
        ),
        Note::on(PartKind::FinishCoat, format!("{}: stops under the band", words.finish_coat())),
        Note::on(PartKind::BaseCoat, format!("{}: goes on behind the tiles", words.base_coat())),
        Note::on(PartKind::Board, words.board()),
        Note::on(PartKind::TopTrack, words.track("top track")),
    ];
    notes.extend(movement(plan));
    Some(Content {
        view: plane::across(face, spot.s + plan.sizes.stud_flange / 2.0 + 30.0),
        window: Window {
            area: Bounds2 {
                low: Point2::new(-clad - 30.0, band.foot - 45.0),
                high: Point2::new(55.0, plan.levels.slab_bottom + 18.0),
            },
            deep: 60.0,
        },
        shows: |part| !matches!(part.group, Group::Appliances | Group::Forms),
        extras: vec![Extra::Cut(Stuff::Sealant, bead)],
        chains: vec![
            Chain::new(Side::Left, "", &heights),
            Chain::new(Side::Below, "", &[-clad, 0.0]),
        ],
        notes,
    })
}

fn lowest(band: &Band) -> f64 {
    band.rows.last().map_or(band.foot, |r| r.0)
}

/// Movement joints in the band, where the file has them.
fn movement(plan: &Plan) -> Option<Note> {
    let words = Words(plan);
    let (every, wide) = (
        plan.design.making.tile_joints.as_ref()?,
        plan.design.making.tile_joint_width.as_ref(),
    );
    let wide = wide.map_or_else(String::new, |w| format!(", {} wide", words.length(w.value)));
    Some(Note::whole(format!(
        "Movement joints in the band every {} at most{wide}, and at inward corners, filled with sealant.",
        words.length(every.value)
    )))
}
