//! A table for a terminal.

use crate::table::{Cell, Column, Table};
use comfy_table::{CellAlignment, ContentArrangement, LineStyle, Table as Grid, TableStyle};

/// A rule under the headings and nothing else.
const STYLE: TableStyle =
    TableStyle::new().header_separator(LineStyle::none().fill('─').junction('─'));

/// A table as text for people: its title, its headings, its rows; numbers stand to the right.
///
/// With a width, in characters, long cells are wrapped so that lines are no wider, as far as words allow.
pub fn table_text(table: &Table, width: Option<u16>) -> String {
    let mut grid = Grid::new();
    grid.load_style(STYLE);
    if let Some(width) = width {
        grid.set_content_arrangement(ContentArrangement::Dynamic);
        grid.set_width(width);
    }
    grid.set_header(table.columns.iter().map(Column::title));
    for row in &table.rows {
        grid.add_row(row.iter().map(|cell| shown(&cell.spelt())));
    }
    for number in 0..table.columns.len() {
        if let (true, Some(column)) = (is_of_numbers(table, number), grid.column_mut(number)) {
            column.set_cell_alignment(CellAlignment::Right);
        }
    }
    let mut text = format!("{}\n", shown(&table.title));
    for line in grid.lines() {
        text.push_str(line.trim_end());
        text.push('\n');
    }
    text
}

fn is_of_numbers(table: &Table, column: usize) -> bool {
    let cells = || table.rows.iter().filter_map(|row| row.get(column));
    cells().any(|c| matches!(c, Cell::Number { .. }))
        && !cells().any(|c| matches!(c, Cell::Text(_)))
}

/// A text on one line, without signs that a terminal would obey.
fn shown(text: &str) -> String {
    text.chars()
        .map(|c| if c.is_control() { ' ' } else { c })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn table() -> Table {
        Table {
            name: "bags".into(),
            title: "Bags".into(),
            columns: vec![Column::plain("what"), Column::with_unit("mass", "lb")],
            rows: vec![
                vec![Cell::text("concrete\u{1b}[31m mix"), Cell::number(80.0, 1)],
                vec![Cell::text("grout"), Cell::number(9.5, 1)],
            ],
        }
    }

    #[test]
    fn numbers_stand_to_the_right_and_nothing_is_obeyed() {
        let text = table_text(&table(), None);
        let lines: Vec<&str> = text.lines().collect();
        assert_eq!(lines[0], "Bags");
        assert!(
            lines[1].contains("what") && lines[1].contains("mass [lb]"),
            "{text}"
        );
        let row = |word: &str| {
            lines
                .iter()
                .find(|l| l.contains(word))
                .unwrap()
                .chars()
                .count()
        };
        assert_eq!(row("80.0"), row(" 9.5"), "{text}");
        assert!(!text.contains('\u{1b}'));
    }

    #[test]
    fn a_narrow_terminal_wraps() {
        let text = table_text(&table(), Some(24));
        assert!(text.lines().all(|l| l.chars().count() <= 24), "{text}");
    }
}
