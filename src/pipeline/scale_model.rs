//! The files of the printable scale model.

use super::{Finding, OutputFile, OutputGroup, Plan, file, svg_file, takeoff};
use crate::drawing::Sheet;
use crate::drawing::scale_model::{Level, Print, Prints, sheets};
use crate::mesh::scale_model::{Layer, Plate, ScaleModel, scale_model};
use crate::parts::Assembly;
use crate::write::threemf::{Document, Item, Material, Object};
use crate::write::{self, PdfInfo};

/// The prints as STL, the plates as 3MF and their list; nothing but findings when it cannot be printed.
///
/// # Errors
/// When a file cannot be written as its format asks.
pub(super) fn outputs(
    plan: &Plan,
    assembly: &Assembly,
) -> Result<(Option<OutputGroup>, Vec<Finding>), Vec<Finding>> {
    let (model, findings) = scale_model(plan, assembly);
    let Some(model) = model else {
        return Ok((None, findings));
    };
    let pieces = model.pieces.iter().map(|piece| OutputFile {
        path: format!("scale-model/{}.stl", piece.name),
        bytes: write::stl_of(&piece.surface),
    });
    let mut files: Vec<_> = pieces.collect();
    for (plate, number) in model.plates.iter().zip(1..) {
        files.push(OutputFile {
            path: format!("scale-model/plate-{number}.3mf"),
            bytes: plate_file(&model, plate, number, &plan.design.project.title)?,
        });
    }
    files.extend(drawn(plan, &model)?);
    let list = write::pieces_list(&model).into_bytes();
    files.push(file("scale-model/pieces.json", list));
    let group = OutputGroup {
        folder: "scale-model",
        about: "the island as a small model: one STL for each print, one 3MF for each bed, lying as they are printed; together.pdf shows how they go together",
        files,
    };
    Ok((Some(group), findings))
}

/// How the pieces go together, as PDF and each sheet as SVG.
fn drawn(plan: &Plan, model: &ScaleModel) -> Result<Vec<OutputFile>, Vec<Finding>> {
    let sheets = sheets(plan, &prints(model));
    let all: Vec<&Sheet> = sheets.iter().collect();
    let project = &plan.design.project;
    let info = PdfInfo {
        title: format!("{}: scale model 1:{}", project.title, model.scale),
        subject: "How the pieces of the scale model go together, and how they lie on the beds"
            .to_owned(),
        author: project.drawn_by.clone(),
        ..PdfInfo::default()
    };
    let pdf = write::pdf(&all, &info).map_err(|e| takeoff::fault("scale-pdf", &e))?;
    let mut files = vec![file("scale-model/together.pdf", pdf)];
    files.extend(
        sheets
            .iter()
            .map(|s| svg_file(format!("scale-model/{}.svg", s.name), s)),
    );
    Ok(files)
}

/// The model as far as it is drawn: from the ground up.
fn prints(model: &ScaleModel) -> Prints<'_> {
    let pieces = model.pieces.iter().map(|piece| Print {
        name: &piece.name,
        level: match piece.layer {
            Layer::Frame => Level::Frame,
            Layer::Base => Level::Base,
            Layer::Counter => Level::Counter,
        },
        surface: &piece.surface,
        back: piece.back,
        members: piece.members.len(),
    });
    let plates = model.plates.iter().map(|p| p.pieces.clone());
    Prints {
        scale: model.scale,
        bed: model.bed,
        clearance: model.clearance,
        frame_inside: model.frame_inside,
        pieces: pieces.collect(),
        plates: plates.collect(),
        simplified: &model.simplified,
    }
}

/// The pieces of one bed in their places.
fn plate_file(
    model: &ScaleModel,
    plate: &Plate,
    number: usize,
    title: &str,
) -> Result<Vec<u8>, Vec<Finding>> {
    let placed = plate
        .pieces
        .iter()
        .filter_map(|(i, placement)| Some((model.pieces.get(*i)?, placement)));
    let objects = placed.clone().map(|(piece, _)| Object {
        name: piece.name.clone(),
        mesh: &piece.surface,
        material: material(piece.layer),
    });
    let items = placed.enumerate().map(|(object, (piece, placement))| Item {
        name: &piece.name,
        object,
        placement: *placement,
    });
    let document = Document {
        title,
        description: format!("Scale model 1:{}, plate {number}", model.scale),
        objects: objects.collect(),
        items: items.collect(),
    };
    write::threemf(&document).map_err(|e| takeoff::fault("scale-3mf", &e))
}

/// A plain colour for each layer.
fn material(layer: Layer) -> Material {
    let srgb = match layer {
        Layer::Counter => [0x9a, 0x9a, 0x96],
        Layer::Base => [0xd8, 0xce, 0xb8],
        Layer::Frame => [0xa8, 0xb2, 0xba],
    };
    Material {
        name: layer.name().to_owned(),
        srgb,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::check::texts_are_clear;

    #[test]
    fn nothing_crosses_a_text_on_the_sheets_of_the_examples_whole_and_split() {
        let split =
            "\nscale_model: {scale: 1:8, printer: {bed: {x: 160 mm, y: 160 mm, z: 200 mm}}}\n";
        let corner = include_str!("../../params/garden-corner.yaml");
        let terrace = include_str!("../../params/terrace-straight.yaml");
        for text in [corner, terrace, &format!("{corner}{split}")] {
            let plan = crate::pipeline::check(text, crate::design::shipped_trade()).unwrap();
            let (model, _) = scale_model(&plan, &crate::parts::build(&plan));
            let model = model.unwrap();
            let prints = prints(&model);
            // From the ground up, as the sheets number them; each piece on one bed.
            assert!(prints.pieces.is_sorted_by_key(|p| p.level));
            let mut placed: Vec<usize> = prints.plates.iter().flatten().map(|p| p.0).collect();
            placed.sort_unstable();
            assert_eq!(placed, (0..prints.pieces.len()).collect::<Vec<_>>());
            let sheets = sheets(&plan, &prints);
            assert!(sheets.len() >= 2);
            for sheet in &sheets {
                texts_are_clear(sheet).unwrap();
                assert!(sheet.lost.is_empty(), "{}: {:?}", sheet.name, sheet.lost);
            }
        }
    }
}
