//! Forms that keep the cutouts open during the pour.

use crate::geometry::{Outline, Placement, Region, Solid};
use crate::parts::{Group, Part, PartKind, Piece, SolidId};
use crate::plan::{Cutout, FORM_THICKNESS, Plan};
use crate::units::Length;
use nalgebra::{Isometry2, Translation3, UnitQuaternion, Vector3};

/// A plug cut to the cutout, as thick as the slab; where the corners are sharp a frame of four strips instead.
pub(super) fn pieces(plan: &Plan) -> Vec<Piece> {
    (0..plan.cutouts.len())
        .flat_map(|i| form(plan, i))
        .collect()
}

fn form(plan: &Plan, index: usize) -> Vec<Piece> {
    let cutout = &plan.cutouts[index];
    let (wide, deep) = (cutout.u1 - cutout.u0, cutout.v1 - cutout.v0);
    let stem = format!("P-{}", plan.design.appliances[cutout.appliance].name);
    let framed = cutout.radius == 0.0 && !cutout.open && wide.min(deep) > 4.0 * FORM_THICKNESS;
    if !framed {
        let run = &plan.runs[cutout.run];
        let outline = plan.counter.cutouts[index]
            .outline
            .moved(&run.motion().inverse());
        let corner = Isometry2::translation(-cutout.u0, -cutout.v0);
        let length = wide.max(deep);
        return vec![piece(
            plan,
            cutout,
            stem,
            "cutout plug",
            outline.moved(&corner),
            (0.0, 0.0),
            length,
        )];
    }
    let t = FORM_THICKNESS;
    let long = || Outline::rectangle(0.0, 0.0, wide, t);
    let short = || Outline::rectangle(0.0, 0.0, t, deep - 2.0 * t);
    [
        (long(), (0.0, 0.0), wide),
        (long(), (0.0, deep - t), wide),
        (short(), (0.0, t), deep - 2.0 * t),
        (short(), (wide - t, t), deep - 2.0 * t),
    ]
    .into_iter()
    .enumerate()
    .map(|(k, (outline, at, length))| {
        piece(
            plan,
            cutout,
            format!("{stem}-{}", k + 1),
            "cutout frame",
            outline,
            at,
            length,
        )
    })
    .collect()
}

/// A piece as thick as the slab, its outline and its place measured from the cutout's corner.
fn piece(
    plan: &Plan,
    cutout: &Cutout,
    mark: String,
    name: &str,
    outline: Outline,
    at: (f64, f64),
    length: f64,
) -> Piece {
    let run = &plan.runs[cutout.run];
    let place = run.point(cutout.u0 + at.0, cutout.v0 + at.1);
    let thickness = plan.counter.slab.thickness;
    let units = plan.design.project.units;
    Piece {
        part: Part {
            mark,
            kind: PartKind::CutoutForm,
            group: Group::Forms,
            run: Some(cutout.run),
            face: None,
            material: "plywood".to_owned(),
            section: format!(
                "{name} {} high",
                units.spell_with_unit(Length::millimetres(thickness))
            ),
            length: Length::millimetres(length),
            solid: SolidId(0),
            placement: Placement::from_parts(
                Translation3::new(place.x, place.y, plan.levels.slab_bottom),
                UnitQuaternion::from_axis_angle(&Vector3::z_axis(), run.along.y.atan2(run.along.x)),
            ),
        },
        solid: Solid::extrusion(Region::solid(outline), thickness),
    }
}
