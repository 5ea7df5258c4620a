//! Differences as lines.

use crate::table::{Cell, Table};
use comfy_table::{CellAlignment, Table as Grid, presets};

/// A table whose columns are group, what, first, second and change, as one line a row: `what  first → second  change`,
/// the group told once, before its first line.
pub fn differences_text(table: &Table) -> String {
    let mut grid = Grid::new();
    grid.load_style(presets::NOTHING);
    let mut group = String::new();
    for row in &table.rows {
        let cells: Vec<String> = row.iter().map(Cell::spelt).collect();
        let [of, what, first, second, change] = &cells[..] else {
            continue;
        };
        let told = if *of == group { "" } else { of };
        grid.add_row([told, what, first, "→", second, change]);
        group.clone_from(of);
    }
    for right in [2, 4, 5] {
        if let Some(column) = grid.column_mut(right) {
            column.set_cell_alignment(CellAlignment::Right);
        }
    }
    let mut text = String::new();
    for line in grid.lines() {
        text.push_str(line.trim_end());
        text.push('\n');
    }
    text
}
