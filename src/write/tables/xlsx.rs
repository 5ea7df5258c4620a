//! Tables as one workbook (Office Open XML, ISO/IEC 29500).

use crate::catalog::PaperKind;
use crate::table::{Cell, Column, Table};
use rust_xlsxwriter::{DocProperties, ExcelDateTime, Format, FormatBorder, Workbook, Worksheet};
use std::collections::BTreeSet;

/// What a workbook says of itself.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Book {
    /// The document's title.
    pub title: String,
    /// By whom it was drawn; may be empty.
    pub author: String,
    /// The paper that it prints on, lying.
    pub paper: PaperKind,
}

/// Why tables could not be put into a workbook.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct XlsxError(String);

impl std::fmt::Display for XlsxError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "the workbook could not be written: {}", self.0)
    }
}

impl std::error::Error for XlsxError {}

impl From<rust_xlsxwriter::XlsxError> for XlsxError {
    fn from(error: rust_xlsxwriter::XlsxError) -> Self {
        Self(error.to_string())
    }
}

/// No column is wider, pixels; longer cells are wrapped.
const WIDEST: u32 = 480;
/// Longer texts are cut (the format's limit is 32,767 characters).
const LONGEST: usize = 32_000;
/// Longest name of a sheet that programs open.
const SHEET_NAME: usize = 31;

/// Writes one sheet a table: headings bold and frozen, each column filtered and as wide as it needs, printed lying
/// and fitted to the paper's width. Numbers are numbers; a text is stored as text, whatever it begins with, and never
/// as a formula. The same tables give the same bytes: the date of creation is a fixed one.
///
/// # Errors
/// When the library refuses, as for more rows than the format holds.
pub fn xlsx(tables: &[Table], book: &Book) -> Result<Vec<u8>, XlsxError> {
    let mut workbook = Workbook::new();
    let properties = DocProperties::new()
        .set_title(plain(&book.title))
        .set_author(plain(&book.author))
        .set_creation_datetime(&ExcelDateTime::from_ymd(2000, 1, 1)?);
    workbook.set_properties(&properties);
    let names = sheet_names(tables);
    for (table, name) in tables.iter().zip(&names) {
        let sheet = workbook.add_worksheet();
        sheet.set_name(name)?;
        fill(sheet, table)?;
        set_print(sheet, table, book);
        if let Some(last) = table.columns.len().checked_sub(1) {
            sheet.autofilter(0, 0, table.rows.len() as u32, last as u16)?;
            sheet.set_freeze_panes(1, 0)?;
            sheet.set_repeat_rows(0, 0)?;
        }
        sheet.set_autofit_max_width(WIDEST);
        sheet.autofit();
    }
    Ok(workbook.save_to_buffer()?)
}

fn fill(sheet: &mut Worksheet, table: &Table) -> Result<(), XlsxError> {
    let heading = Format::new()
        .set_bold()
        .set_text_wrap()
        .set_border_bottom(FormatBorder::Thin);
    for (column, title) in (0..).zip(table.columns.iter().map(Column::title)) {
        sheet.write_string_with_format(0, column, plain(&title), &heading)?;
    }
    for (row, cells) in (1..).zip(&table.rows) {
        for (column, cell) in (0..).zip(cells) {
            put(sheet, (row, column), cell)?;
        }
    }
    Ok(())
}

fn put(sheet: &mut Worksheet, (row, column): (u32, u16), cell: &Cell) -> Result<(), XlsxError> {
    match cell {
        Cell::Empty => {}
        Cell::Text(text) => {
            let format = Format::new().set_text_wrap();
            let format = if text.starts_with(['=', '+', '-', '@']) {
                // Stays a text when somebody edits the cell.
                format.set_quote_prefix()
            } else {
                format
            };
            sheet.write_string_with_format(row, column, plain(text), &format)?;
        }
        Cell::Number { decimals, .. } => {
            if let Some(number) = cell.rounded() {
                let format = Format::new().set_num_format(number_format(*decimals));
                sheet.write_number_with_format(row, column, number, &format)?;
            }
        }
    }
    Ok(())
}

fn number_format(decimals: u8) -> String {
    match decimals {
        0 => "#,##0".to_owned(),
        n => format!("#,##0.{}", "0".repeat(usize::from(n))),
    }
}

fn set_print(sheet: &mut Worksheet, table: &Table, book: &Book) {
    // The format's number of a paper.
    let paper = match book.paper {
        PaperKind::Letter => 1,
        PaperKind::Tabloid => 3,
        PaperKind::A3 => 8,
        _ => 9,
    };
    sheet.set_paper_size(paper).set_landscape();
    sheet.set_print_fit_to_pages(1, 0);
    // An ampersand begins a code in headers; the format holds 255 characters.
    let spoken = |text: &str| -> String {
        plain(text)
            .chars()
            .take(80)
            .collect::<String>()
            .replace('&', "&&")
    };
    sheet.set_header(format!(
        "&L{}&R{}",
        spoken(&table.title),
        spoken(&book.title)
    ));
    sheet.set_footer("&R&P / &N");
}

/// A text that the format can hold.
fn plain(text: &str) -> String {
    text.chars()
        .map(|c| if c.is_control() && c != '\n' { ' ' } else { c })
        .take(LONGEST)
        .collect()
}

/// A name for each sheet, each once: its table's name in words, or its title, without the signs that no name may have.
fn sheet_names(tables: &[Table]) -> Vec<String> {
    let mut taken = BTreeSet::new();
    let mut names = Vec::new();
    for table in tables {
        let words = [
            table.name.replace('-', " "),
            table.title.clone(),
            "table".to_owned(),
        ];
        let mut words = words.into_iter().map(|w| allowed(&w));
        let bare = words.find(|w| !w.is_empty()).unwrap_or_default();
        let numbered = (1..).map(|n| {
            let tail = if n == 1 {
                String::new()
            } else {
                format!(" {n}")
            };
            let stem: String = bare.chars().take(SHEET_NAME - tail.len()).collect();
            format!("{}{tail}", stem.trim_end())
        });
        let mut free = numbered.filter(|name| !taken.contains(&name.to_lowercase()));
        let name = free.next().unwrap_or_default();
        taken.insert(name.to_lowercase());
        names.push(name);
    }
    names
}

/// A text without the signs that a sheet's name may not have.
fn allowed(text: &str) -> String {
    let sign = |c: char| {
        if "[]:*?/\\'".contains(c) || c.is_control() {
            ' '
        } else {
            c
        }
    };
    text.chars().map(sign).collect::<String>().trim().to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn table(title: &str) -> Table {
        Table {
            name: title.into(),
            title: title.into(),
            columns: vec![Column::plain("a & b"), Column::with_unit("length", "in")],
            rows: vec![
                vec![Cell::text("=1+1"), Cell::number(2.5, 2)],
                vec![Cell::text("x".repeat(40_000)), Cell::number(f64::NAN, 2)],
                vec![
                    Cell::text("\u{1}two\nlines"),
                    Cell::Number {
                        value: f64::INFINITY,
                        decimals: 1,
                    },
                ],
            ],
        }
    }

    fn book() -> Book {
        Book {
            title: "A & B <c>".into(),
            author: String::new(),
            paper: PaperKind::Letter,
        }
    }

    #[test]
    fn the_same_tables_give_the_same_bytes() {
        let tables = [
            table("One"),
            table("one"),
            Table::default(),
            table("a/b: [c]?*'"),
        ];
        let first = xlsx(&tables, &book()).unwrap();
        assert!(first.starts_with(b"PK"));
        assert_eq!(first, xlsx(&tables, &book()).unwrap());
        // A workbook has a sheet at least; the library adds one.
        assert!(xlsx(&[], &book()).is_ok());
    }

    #[test]
    fn sheets_have_names_that_programs_open() {
        let long = "Everything that is needed at the shop and elsewhere";
        let tables = ["cut-list", "Cut list", "cut/list", long, long, "''"].map(table);
        let expected = [
            "cut list",
            "Cut list 2",
            "cut list 3",
            "Everything that is needed at th",
            "Everything that is needed at 2",
            "table",
        ];
        assert_eq!(sheet_names(&tables), expected);
    }
}
