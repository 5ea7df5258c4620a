//! What hangs in the workshop, copied from the takeoff into what drawings are made of.

use super::{OutputFile, svg_file};
use crate::diagnostics::{Finding, Place};
use crate::drawing::Sheet;
use crate::drawing::workshop::{
    CutEnd, Foot, Label, Stick, StickCut, StickSet, label_sheets, stick_sheets,
};
use crate::plan::Plan;
use crate::takeoff::cut_list::{CutList, CutPiece, CutStick, End};
use crate::takeoff::{Takeoff, whereabouts};
use crate::units::{Length, Notation};
use crate::write::{self, PdfInfo};

/// Sheets of sticks, and labels for everything that is cut from them.
///
/// # Errors
/// When the labels cannot be written as a PDF.
pub(super) fn outputs(plan: &Plan, takeoff: &Takeoff) -> Result<Vec<OutputFile>, Vec<Finding>> {
    let project = &plan.design.project;
    let sets: Vec<_> = takeoff
        .cut_lists
        .iter()
        .map(|list| stick_set(project.units, list))
        .collect();
    let sheets = stick_sheets(project, &sets);
    let svg = |sheet: &Sheet| svg_file(format!("takeoff/{}.svg", sheet.name), sheet);
    let mut files: Vec<_> = sheets.iter().map(svg).collect();
    let labels = label_sheets(plan.design.buying.labels, &labels(plan, takeoff));
    if !labels.is_empty() {
        files.push(OutputFile {
            path: "takeoff/labels.pdf".to_owned(),
            bytes: labels_pdf(plan, &labels)?,
        });
    }
    Ok(files)
}

fn labels_pdf(plan: &Plan, labels: &[Sheet]) -> Result<Vec<u8>, Vec<Finding>> {
    let project = &plan.design.project;
    let info = PdfInfo {
        title: format!("{}: labels", project.title),
        subject: "Labels for the parts; print at 100 %".to_owned(),
        author: project.drawn_by.clone(),
    };
    let sheets: Vec<&Sheet> = labels.iter().collect();
    write::pdf(&sheets, &info).map_err(|e| {
        vec![Finding::error(
            "labels-pdf",
            &Place::default(),
            e.to_string(),
        )]
    })
}

fn stick_set(notation: Notation, list: &CutList) -> StickSet {
    let bought = list.stock.iter().zip(&list.counts).filter(|(_, n)| **n > 0);
    let which: Vec<_> = bought
        .map(|(stick, count)| format!("{count} × {}", notation.spell_with_unit(stick.length)))
        .collect();
    let sticks = list.sticks.iter().zip(1..);
    StickSet {
        title: format!("{}: {}", list.section, which.join(", ")),
        sticks: sticks.map(|(s, n)| stick(notation, list, s, n)).collect(),
    }
}

fn stick(notation: Notation, list: &CutList, stick: &CutStick, number: u32) -> Stick {
    let length = |steps: u32| notation.step() * f64::from(steps);
    let stock = &list.stock[stick.stock];
    let cut = |placed: &crate::takeoff::cut_list::Placed| {
        let piece = &list.pieces[placed.piece];
        let ends = piece.ends.map(end);
        StickCut {
            from: length(placed.start),
            to: length(placed.start + piece.length),
            mark: piece.name(),
            ends: if placed.reversed {
                [ends[1], ends[0]]
            } else {
                ends
            },
            foot: piece.aligned.then_some(if placed.reversed {
                Foot::Far
            } else {
                Foot::Near
            }),
        }
    };
    Stick {
        number,
        length: stock.length,
        cuts: stick.cuts.iter().map(cut).collect(),
        offcut: (length(stick.offcut)).min(stock.length),
    }
}

fn end(end: End) -> CutEnd {
    match end {
        End::Square => CutEnd::Square,
        End::Tab => CutEnd::Tab,
        End::Mitre => CutEnd::Mitre,
    }
}

/// A label for every piece that is cut, in the order of the cut lists; those on no stick come last in each.
fn labels(plan: &Plan, takeoff: &Takeoff) -> Vec<Label> {
    let of = |list: &CutList| -> Vec<Label> {
        let on_sticks = list.sticks.iter().flat_map(|s| &s.cuts).map(|c| c.piece);
        let pieces = on_sticks.chain(list.too_long.iter().copied());
        pieces
            .filter_map(|number| list.pieces.get(number))
            .map(|piece| label(plan, &list.section, piece))
            .collect()
    };
    takeoff.cut_lists.iter().flat_map(of).collect()
}

fn label(plan: &Plan, section: &str, piece: &CutPiece) -> Label {
    let notation = plan.design.project.units;
    let length: Length = notation.step() * f64::from(piece.length);
    Label {
        mark: piece.name(),
        length: notation.spell_with_unit(length),
        kind: if piece.kind.name() == section {
            section.to_owned()
        } else {
            format!("{}, {section}", piece.kind.name())
        },
        place: whereabouts(plan, piece.run, piece.face),
    }
}
