//! The edge of a cutout with the appliance in it.

use super::content::{Chain, Content, Note, Window};
use super::plane;
use super::words::Words;
use crate::design::Side as RunSide;
use crate::drawing::dimension::Side;
use crate::geometry::{Bounds2, Point2};
use crate::parts::{Group, PartKind};
use crate::plan::Plan;

/// The left edge of a cutout, cut along its run.
pub(super) fn content(plan: &Plan, cutout: usize) -> Option<Content> {
    let cutout = plan.cutouts.get(cutout)?;
    let run = plan.runs.get(cutout.run)?;
    let appliance = plan.design.appliances.get(cutout.appliance)?;
    let is_front = |f: &&crate::plan::Face| f.run == cutout.run && f.side == RunSide::Working;
    let face = plan.faces.iter().find(is_front)?;
    let (levels, words) = (&plan.levels, Words(plan));
    let s = (run.point(cutout.u0, 0.0) - face.start).dot(&face.along);
    let deep = plan.design.trade.stud.depth.mm();
    let flange = appliance.flange.mm();
    let mut chains = vec![Chain::new(
        Side::Left,
        "",
        &[
            levels.frame_top - deep,
            levels.frame_top,
            levels.slab_bottom,
            levels.counter_top,
        ],
    )];
    if flange > 0.0 {
        chains.push(Chain::new(Side::Above, "flange", &[s - flange, s]));
    }
    Some(Content {
        view: plane::along(face, f64::midpoint(cutout.v0.max(0.0), cutout.v1)),
        window: Window {
            area: Bounds2 {
                low: Point2::new(s - 85.0, levels.frame_top - deep - 12.0),
                high: Point2::new(s + 60.0, levels.counter_top + 14.0),
            },
            deep: 40.0,
        },
        shows: |part| part.group != Group::Forms,
        extras: Vec::new(),
        chains,
        notes: vec![
            Note::on(
                PartKind::Flange,
                format!("flange of the {}, on the counter", appliance.name),
            ),
            Note::on(PartKind::Slab, words.slab()),
            Note::on(PartKind::Substrate, words.substrate()),
            Note::on(
                PartKind::Trimmer,
                format!(
                    "{}: at the edge of the cutout, folded onto the long panels",
                    words.stud("trimmer, stud")
                ),
            ),
            Note::on(PartKind::Blocking, words.stud("blocking, stud")),
            Note::on(
                PartKind::Body,
                format!(
                    "body of the {}: its envelope only; gaps and clearances by its own instructions",
                    appliance.name
                ),
            ),
            Note::whole(format!(
                "Cutout {} × {}{}, kept open by a form as thick as the slab. Check it against the maker's sheet before the pour.",
                words.length(appliance.cutout_width.value),
                words.length(appliance.cutout_depth.value),
                corners(words, appliance.corner_radius.mm())
            )),
        ],
    })
}

fn corners(words: Words, radius: f64) -> String {
    if radius > 0.0 {
        format!(", corners R {}", words.mm(radius))
    } else {
        String::new()
    }
}
