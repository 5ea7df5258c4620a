//! What hangs in the workshop, copied from the takeoff into what drawings are made of.

use super::takeoff::fault;
use super::{OutputFile, svg_file};
use crate::diagnostics::Finding;
use crate::drawing::Sheet;
use crate::drawing::workshop::{
    Board, BoardCut, BoardPiece, BoardSet, CutEnd, Foot, Label, Rectangle, Stick, StickCut,
    StickSet, board_sheets, label_sheets, stick_sheets,
};
use crate::plan::Plan;
use crate::takeoff::cut_list::{CutList, CutPiece, CutStick, End};
use crate::takeoff::sheets::{OnSheet, SheetLayout, SheetList, SheetPiece};
use crate::takeoff::{Takeoff, whereabouts};
use crate::units::Notation;
use crate::write::{self, PdfInfo};

/// Sheets of sticks and boards, and labels for everything that is cut from them.
///
/// # Errors
/// When the labels cannot be written as a PDF.
pub(super) fn outputs(plan: &Plan, takeoff: &Takeoff) -> Result<Vec<OutputFile>, Vec<Finding>> {
    let sheets = sheets(plan, takeoff);
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

/// Sheets of sticks, then of boards.
pub(super) fn sheets(plan: &Plan, takeoff: &Takeoff) -> Vec<Sheet> {
    let project = &plan.design.project;
    let sets: Vec<_> = takeoff
        .cut_lists
        .iter()
        .map(|list| stick_set(project.units, list))
        .collect();
    let boards: Vec<_> = takeoff
        .sheet_lists
        .iter()
        .map(|list| board_set(project.units, list))
        .collect();
    let mut sheets = stick_sheets(project, &sets);
    sheets.extend(board_sheets(project, &boards));
    sheets
}

fn labels_pdf(plan: &Plan, labels: &[Sheet]) -> Result<Vec<u8>, Vec<Finding>> {
    let project = &plan.design.project;
    let info = PdfInfo {
        title: format!("{}: labels", project.title),
        subject: "Labels for the parts; print at 100 %".to_owned(),
        author: project.drawn_by.clone(),
        ..PdfInfo::default()
    };
    let sheets: Vec<&Sheet> = labels.iter().collect();
    write::pdf(&sheets, &info).map_err(|e| fault("labels-pdf", &e))
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

fn board_set(notation: Notation, list: &SheetList) -> BoardSet {
    let side = |length| notation.spell_with_unit(length);
    let sheets = |count: u32| match count {
        1 => "1 sheet".to_owned(),
        n => format!("{n} sheets"),
    };
    let bought = list.stock.iter().zip(&list.counts).filter(|(_, n)| **n > 0);
    let which: Vec<_> = bought
        .map(|(s, count)| {
            format!(
                "{} of {} × {}",
                sheets(*count),
                side(s.length),
                side(s.width)
            )
        })
        .collect();
    let layouts = list.layouts.iter().zip(1..);
    BoardSet {
        title: format!("{}: {}", list.material, which.join(", ")),
        grain: list.pieces.iter().any(|p| !p.may_turn),
        boards: layouts.map(|(l, n)| board(notation, list, l, n)).collect(),
    }
}

fn board(notation: Notation, list: &SheetList, layout: &SheetLayout, number: u32) -> Board {
    let length = |steps: u32| notation.step() * f64::from(steps);
    let point = |x: u32, y: u32| (length(x), length(y));
    let rectangle = |at: (u32, u32), size: (u32, u32)| Rectangle {
        x: length(at.0),
        y: length(at.1),
        dx: length(size.0),
        dy: length(size.1),
    };
    let piece = |on: &OnSheet| BoardPiece {
        area: rectangle(on.at, on.size),
        mark: list.pieces[on.piece].name(),
        note: list.pieces[on.piece].note.clone(),
    };
    let stock = &list.stock[layout.stock];
    let offcuts = layout.offcuts.iter();
    let cuts = layout.cuts.iter();
    Board {
        number,
        length: stock.length,
        width: stock.width,
        pieces: layout.pieces.iter().map(piece).collect(),
        offcuts: offcuts.map(|o| rectangle(o.at, o.size)).collect(),
        cuts: cuts
            .map(|&(x0, y0, x1, y1)| BoardCut {
                from: point(x0, y0),
                to: point(x1, y1),
            })
            .collect(),
    }
}

/// A label for every piece that is cut, in the order it is cut; those on no stick or sheet come last in each list.
fn labels(plan: &Plan, takeoff: &Takeoff) -> Vec<Label> {
    let sticks = takeoff.cut_lists.iter().flat_map(|list| {
        let on_sticks = list.sticks.iter().flat_map(|s| &s.cuts).map(|c| c.piece);
        let pieces = on_sticks.chain(list.too_long.iter().copied());
        pieces.map(|number| stick_label(plan, &list.section, &list.pieces[number]))
    });
    let boards = takeoff.sheet_lists.iter().flat_map(|list| {
        let on_sheets = list.layouts.iter().flat_map(|l| &l.pieces);
        let on_sheets = on_sheets.map(|p| p.piece);
        let pieces = on_sheets.chain(list.too_large.iter().copied());
        pieces.map(|number| board_label(plan, &list.material, &list.pieces[number]))
    });
    sticks.chain(boards).collect()
}

fn stick_label(plan: &Plan, section: &str, piece: &CutPiece) -> Label {
    let notation = plan.design.project.units;
    Label {
        mark: piece.name(),
        length: notation.spell_with_unit(notation.step() * f64::from(piece.length)),
        kind: kind(piece.kind.name(), section),
        place: whereabouts(plan, piece.run, piece.face),
    }
}

fn board_label(plan: &Plan, material: &str, piece: &SheetPiece) -> Label {
    let notation = plan.design.project.units;
    let side = |steps: u32| notation.step() * f64::from(steps);
    let length = notation.spell(side(piece.length));
    let width = notation.spell_with_unit(side(piece.width));
    Label {
        mark: piece.name(),
        length: format!("{length} × {width}"),
        kind: kind(piece.what(), material),
        place: whereabouts(plan, piece.run, piece.face),
    }
}

/// What a piece is and of what, once where these are the same words.
fn kind(kind: &str, stock: &str) -> String {
    if stock.contains(kind) {
        stock.to_owned()
    } else {
        format!("{kind}, {stock}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::check::texts_are_clear;

    #[test]
    fn nothing_crosses_a_text_on_the_sheets_of_the_examples() {
        for text in [
            include_str!("../../params/garden-corner.yaml"),
            include_str!("../../params/terrace-straight.yaml"),
        ] {
            let plan = crate::pipeline::check(text, crate::design::shipped_trade()).unwrap();
            let takeoff = crate::takeoff::reckon(&plan, &crate::parts::build(&plan));
            let sheets = sheets(&plan, &takeoff);
            assert!(sheets.len() >= 3);
            for sheet in &sheets {
                texts_are_clear(sheet).unwrap();
            }
        }
    }
}
