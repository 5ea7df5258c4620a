//! The models: the island and its layers in open formats, one line a format.

use super::{OutputFile, OutputGroup, file, takeoff};
use crate::diagnostics::{Finding, Place};
use crate::mesh::{Appearances, Defect, Fault, Model, SHOWN_TOLERANCE, Showing};
use crate::parts::{Assembly, Group, Part};
use crate::plan::Plan;
use crate::units::Length;
use crate::write;
use crate::write::threemf::Material;

/// The models' folder.
///
/// # Errors
/// When a solid has no sound surface, or a file cannot be written as its format asks.
pub fn outputs(
    plan: &Plan,
    assembly: &Assembly,
    tolerance: Length,
) -> Result<OutputGroup, Vec<Finding>> {
    let model = Model::new(assembly, tolerance.mm()).map_err(|defects| as_findings(&defects))?;
    let mut files = vec![
        file(
            "models/assembly.stl",
            write::stl(&model.selection(assembly, None)),
        ),
        file(
            "models/parts.json",
            write::parts_list(assembly, &model).into_bytes(),
        ),
        file("models/island.3mf", threemf(plan, assembly, &model)?),
        file("models/island.step", step(plan, assembly)?),
    ];
    files.extend(layers(assembly, &model));
    let shown = shown(assembly, tolerance)?;
    let showing = Showing::of(plan, assembly, &shown);
    files.push(file("models/island.glb", write::glb(&showing)));
    let usdz = write::usdz(&showing).map_err(|e| takeoff::fault("models-usdz", &e))?;
    files.push(file("models/island.usdz", usdz));
    Ok(OutputGroup {
        folder: "models",
        about: "the island to look at (GLB, USDZ), as 3MF, as exact solids (STEP), it and its layers as STL, and a list of all parts",
        files,
    })
}

/// All parts by their marks, in their colours.
fn threemf(plan: &Plan, assembly: &Assembly, model: &Model) -> Result<Vec<u8>, Vec<Finding>> {
    let selection = model.selection(assembly, None);
    let looks = Appearances::of(&plan.design);
    let material = |part: &Part| {
        let look = looks.of_kind(part.kind);
        Material {
            name: look.name.to_owned(),
            srgb: look.srgb.0,
        }
    };
    let document = write::threemf::island(&selection, &plan.design.project.title, material);
    write::threemf(&document).map_err(|e| takeoff::fault("models-3mf", &e))
}

/// The surfaces of what is only looked at: no finer than an eye sees.
pub(super) fn shown(assembly: &Assembly, tolerance: Length) -> Result<Model, Vec<Finding>> {
    let tolerance = tolerance.mm().max(SHOWN_TOLERANCE);
    Model::new(assembly, tolerance).map_err(|defects| as_findings(&defects))
}

/// The exact solids; one without a closed boundary is a fault of the program.
fn step(plan: &Plan, assembly: &Assembly) -> Result<Vec<u8>, Vec<Finding>> {
    let runs: Vec<&str> = plan
        .design
        .runs
        .iter()
        .map(|r| r.name.value.as_str())
        .collect();
    let titles = write::StepTitles {
        island: &plan.design.project.title,
        runs: &runs,
    };
    let text = write::step(assembly, &titles).map_err(|mark| {
        as_findings(&[Defect {
            mark,
            fault: Fault::Open,
        }])
    })?;
    Ok(text.into_bytes())
}

/// Each group of parts that is there, as a file of its own.
fn layers(assembly: &Assembly, model: &Model) -> Vec<OutputFile> {
    let selected = Group::ALL.map(|group| (group, model.selection(assembly, Some(group))));
    let present = selected.iter().filter(|(_, s)| s.triangle_count() > 0);
    present
        .map(|(group, selection)| OutputFile {
            path: format!("models/{}.stl", group.name()),
            bytes: write::stl(selection),
        })
        .collect()
}

/// A solid without a sound surface is a fault of the program: it is said, and nothing is written.
fn as_findings(defects: &[Defect]) -> Vec<Finding> {
    defects
        .iter()
        .map(|defect| {
            Finding::error("model-unsound", &Place::default(), defect.to_string())
                .hint("this is a fault of the program: please report it with the parameter file")
        })
        .collect()
}
