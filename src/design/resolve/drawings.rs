//! The drawing set resolved, and the form of its title block.

use super::amounts::Range;
use super::gather::{Gather, Limits};
use crate::catalog::{Paper, PaperKind};
use crate::design::{AskedCut, Cell, Drawings, Field, Ink, Placed, Run, TitleBlock};
use crate::diagnostics::{Finding, Place, Verdict, in_order};
use crate::parameters::{self, Given, SheetPaper, read_title_block};
use crate::units::{Length, Notation, parse_angle};
use std::sync::OnceLock;

/// The form of the title block that comes with the program.
pub const TITLE_BLOCK: &str = include_str!("../../../templates/title-block.yaml");

/// All directions once round either way.
const TURN: Range = Range {
    least: -360.0,
    most: 360.0,
    said: "-360 deg to 360 deg",
};

/// How wide a cell may be, and how high a row.
const CELL: Limits = Limits(5.0, 400.0);
const ROW: Limits = Limits(9.0, 30.0);
/// The block must leave room beside it for the scale bar and the notes, millimetres.
const WIDEST: f64 = 180.0;
/// How high the block may be, millimetres.
const HIGHEST: f64 = 60.0;

/// How the drawing set is drawn.
pub(super) fn drawings(
    g: &mut Gather,
    given: &Given<parameters::Drawings>,
    runs: &[Run],
) -> Drawings {
    let empty = parameters::Drawings::default();
    let d = given.value().unwrap_or(&empty);
    let usual = match g.notation {
        Notation::Imperial => SheetPaper::Tabloid,
        Notation::Metric => SheetPaper::A3,
    };
    let north = g.amount(&d.north, &TURN, parse_angle);
    Drawings {
        paper: Placed {
            value: paper(*d.paper.value().unwrap_or(&usual)),
            place: d.paper.place(),
        },
        ink: match d.ink.value() {
            Some(parameters::Ink::Colour) => Ink::Colour,
            Some(parameters::Ink::Black) | None => Ink::Black,
        },
        north: north.map(|n| n.value),
        sections: sections(g, &d.sections, runs),
        title_block: shipped_title_block().clone(),
    }
}

fn paper(name: SheetPaper) -> Paper {
    let kind = match name {
        SheetPaper::A4 => PaperKind::A4,
        SheetPaper::A3 => PaperKind::A3,
        SheetPaper::A2 => PaperKind::A2,
        SheetPaper::A1 => PaperKind::A1,
        SheetPaper::Letter => PaperKind::Letter,
        SheetPaper::Tabloid => PaperKind::Tabloid,
        SheetPaper::AnsiC => PaperKind::AnsiC,
        SheetPaper::AnsiD => PaperKind::AnsiD,
        SheetPaper::AnsiE => PaperKind::AnsiE,
        SheetPaper::ArchA => PaperKind::ArchA,
        SheetPaper::ArchB => PaperKind::ArchB,
        SheetPaper::ArchC => PaperKind::ArchC,
        SheetPaper::ArchD => PaperKind::ArchD,
    };
    kind.landscape()
}

fn sections(
    g: &mut Gather,
    given: &Given<Vec<Given<parameters::Section>>>,
    runs: &[Run],
) -> Vec<AskedCut> {
    let mut found = Vec::new();
    for (section, place) in given.entries() {
        let run = g.run_of(&section.run, place, runs);
        let most = run
            .and_then(|r| runs.get(r))
            .map_or(f64::MAX, |r| r.length.mm());
        let at = g.entry_length(&section.at, place, "at", Limits(0.0, most));
        if let (Some(run), Some(at)) = (run, at) {
            found.push(AskedCut { run, at });
        }
    }
    found
}

/// The form of the title block that comes with the program, read once.
pub fn shipped_title_block() -> &'static TitleBlock {
    static FORM: OnceLock<TitleBlock> = OnceLock::new();
    FORM.get_or_init(|| {
        title_block(TITLE_BLOCK).unwrap_or_else(|_| TitleBlock {
            width: Length::millimetres(WIDEST),
            row_height: Length::millimetres(10.0),
            rows: Vec::new(),
        })
    })
}

/// Reads the form of a title block.
///
/// # Errors
/// Everything that is wrong with it, in the order of the file.
pub fn title_block(text: &str) -> Result<TitleBlock, Vec<Finding>> {
    let reading = read_title_block(text);
    let mut gather = Gather::new(Notation::Metric);
    gather.findings = reading.findings;
    if !reading.is_usable {
        return Err(gather.findings);
    }
    let top = Place {
        line: 1,
        column: 1,
        ..Place::default()
    };
    let file = &reading.file;
    let row_height = gather.length_or(&file.row_height, Length::millimetres(10.0), ROW);
    gather.needed(&file.rows, &top, "rows");
    let rows: Vec<Vec<Cell>> = (file.rows.entries())
        .map(|(cells, _)| cells.iter().filter_map(|c| cell(&mut gather, c)).collect())
        .collect();
    let form = TitleBlock {
        width: rows.first().map_or(Length::millimetres(0.0), |r| width(r)),
        row_height: row_height.value,
        rows,
    };
    shape(&mut gather, &form, &file.rows);
    if gather.findings.iter().any(|f| f.verdict >= Verdict::Fail) {
        return Err(in_order(gather.findings));
    }
    Ok(form)
}

fn width(row: &[Cell]) -> Length {
    let all = row.iter().map(|c| c.width.mm());
    Length::millimetres(all.sum())
}

fn cell(g: &mut Gather, given: &Given<parameters::TitleCell>) -> Option<Cell> {
    let Given::Yes(cell, place) = given else {
        return None;
    };
    let field = g.needed(&cell.field, place, "field").copied();
    let width = g.needed_length(&cell.width, place, "width", CELL);
    Some(Cell {
        field: field_of(field?),
        label: g.text(&cell.label, ""),
        width: width?.value,
    })
}

fn field_of(field: parameters::TitleField) -> Field {
    match field {
        parameters::TitleField::Project => Field::Project,
        parameters::TitleField::Place => Field::Place,
        parameters::TitleField::DrawnBy => Field::DrawnBy,
        parameters::TitleField::Date => Field::Date,
        parameters::TitleField::Revision => Field::Revision,
        parameters::TitleField::Title => Field::Title,
        parameters::TitleField::Sheet => Field::Sheet,
        parameters::TitleField::Scale => Field::Scale,
        parameters::TitleField::Units => Field::Units,
        parameters::TitleField::Blank => Field::Blank,
    }
}

/// Holds the invariant of the form: there are rows, they are of one width, and the block leaves room on the sheet.
fn shape(
    g: &mut Gather,
    form: &TitleBlock,
    given: &Given<Vec<Given<Vec<Given<parameters::TitleCell>>>>>,
) {
    if !g.findings.is_empty() {
        return;
    }
    let place = given.place();
    if form.rows.is_empty() || form.width.mm() <= 0.0 {
        let hint = "write at least one row with one cell";
        g.error(
            "empty-title-block",
            &place,
            "the title block has no rows",
            hint,
        );
        return;
    }
    for (row, (_, place)) in form.rows.iter().zip(given.entries()) {
        let own = width(row);
        if (own - form.width).mm().abs() > 0.01 {
            let found = format!(
                "this row is {} mm wide, the first one {} mm",
                own.mm(),
                form.width.mm()
            );
            g.error(
                "uneven-title-block",
                place,
                found,
                "make all rows of the same width",
            );
        }
    }
    if form.width.mm() > WIDEST + 0.01 {
        let found = format!("the title block is {} mm wide", form.width.mm());
        let hint = format!("make it {WIDEST} mm wide at most: beside it stands the scale bar");
        g.error("large-title-block", &place, found, hint);
    }
    if form.height().mm() > HIGHEST {
        let found = format!("the title block is {} mm high", form.height().mm());
        let hint = format!("use fewer or lower rows, {HIGHEST} mm together at most");
        g.error("large-title-block", &place, found, hint);
    }
    let holds = |field: Field| form.rows.iter().flatten().any(|c| c.field == field);
    for (field, name, least) in [
        (Field::Sheet, "sheet", 20.0),
        (Field::Scale, "scale", 25.0),
        (Field::Title, "title", 50.0),
    ] {
        let mut cells = form.rows.iter().flatten().filter(|c| c.field == field);
        if let Some(narrow) = cells.find(|c| c.width.mm() < least) {
            let found = format!("the cell for the {name} is {} mm wide", narrow.width.mm());
            let hint = format!("make it at least {least} mm wide: what stands in it must be read");
            g.error("narrow-title-block", &place, found, hint);
        }
        if !holds(field) {
            let found = format!("the title block has no cell for the {name}");
            g.error(
                "empty-title-block",
                &place,
                found,
                format!("add a cell with field: {name}"),
            );
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_shipped_form_is_the_width_of_the_standard() {
        // ISO 7200: 180 mm wide.
        let form = title_block(TITLE_BLOCK).unwrap();
        assert_eq!(form.width.mm(), 180.0);
        assert_eq!(form.height().mm(), 30.0);
        assert_eq!(form.rows.len(), 3);
    }

    #[test]
    fn what_is_wrong_with_a_form_is_said_with_its_line() {
        let codes = |text: &str| -> Vec<(&'static str, usize)> {
            let found = title_block(text).unwrap_err();
            found.iter().map(|f| (f.code, f.place.line)).collect()
        };
        let cell = |field: &str, width: u32| format!("{{field: {field}, width: {width} mm}}");
        let all = [cell("sheet", 40), cell("scale", 40), cell("title", 50)].join(", ");
        assert_eq!(codes("rows: []"), [("empty-title-block", 1)]);
        assert_eq!(codes("row_height: 12 mm"), [("missing-key", 1)]);
        let uneven = format!("rows:\n  - [{all}]\n  - [{}]", cell("date", 60));
        assert_eq!(codes(&uneven), [("uneven-title-block", 3)]);
        let wide = format!("rows:\n  - [{all}, {}]", cell("date", 70));
        assert_eq!(codes(&wide), [("large-title-block", 2)]);
        let narrow = format!("rows:\n  - [{all}, {}]", cell("sheet", 10));
        assert_eq!(codes(&narrow), [("narrow-title-block", 2)]);
        let without = format!("rows:\n  - [{}]", cell("sheet", 60));
        let codes = codes(&without);
        assert_eq!(codes.len(), 2, "{codes:?}");
    }
}
