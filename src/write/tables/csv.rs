//! A table as CSV.

use crate::table::{Cell, Table};
use csv::{Terminator, WriterBuilder};

/// Writes a table after RFC 4180, UTF-8: a record of headings, then one a row; every record ends with CR LF, and a
/// field is quoted where it must be.
///
/// Units stand in the headings, numbers have a decimal point and no thousands. A text stays as it is whatever sign it
/// begins with: guarding a spreadsheet against it would change what every other reader reads.
pub fn csv(table: &Table) -> Vec<u8> {
    let mut writer = WriterBuilder::new()
        .terminator(Terminator::CRLF)
        .flexible(true)
        .from_writer(Vec::new());
    let headings = table.columns.iter().map(crate::table::Column::title);
    // Memory takes whatever is written to it, and rows of any length are allowed above: neither call can fail.
    let _ = writer.write_record(headings);
    for row in &table.rows {
        let _ = writer.write_record(row.iter().map(Cell::spelt));
    }
    writer.into_inner().unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::table::Column;

    #[test]
    fn records_are_those_of_the_standard() {
        let table = Table {
            name: "trial".into(),
            title: "Trial".into(),
            columns: vec![Column::plain("mark"), Column::with_unit("length", "in")],
            rows: vec![
                vec![Cell::text("a,b"), Cell::number(2.0, 2)],
                vec![Cell::text("two\r\nlines, 3\" each"), Cell::Empty],
                vec![Cell::text("=1+1"), Cell::number(-0.5, 1)],
                vec![Cell::text("½ Ø"), Cell::count(3)],
            ],
        };
        // By rules 1, 2, 5, 6 and 7 of RFC 4180, section 2.
        let expected = "mark,length [in]\r\n\"a,b\",2.00\r\n\"two\r\nlines, 3\"\" each\",\r\n=1+1,-0.5\r\n½ Ø,3\r\n";
        assert_eq!(String::from_utf8(csv(&table)).unwrap(), expected);
    }

    #[test]
    fn a_row_of_one_empty_cell_is_still_a_record() {
        let table = Table {
            columns: vec![Column::plain("note")],
            rows: vec![vec![Cell::Empty], vec![Cell::text("x")]],
            ..Table::default()
        };
        assert_eq!(csv(&table), b"note\r\n\"\"\r\nx\r\n");
    }
}
