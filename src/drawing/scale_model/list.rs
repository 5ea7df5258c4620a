//! The list of pieces.

use super::prints::{Level, Prints};
use crate::table::{Cell, Column, Table};

/// One row a piece, in the order of putting together: number, file, size as it lies on the bed, members in it, bed.
pub(super) fn table(prints: &Prints) -> Table {
    let framed = prints.pieces.iter().any(|p| p.members > 0);
    let mut columns = vec![
        Column::plain("no."),
        Column::plain("file"),
        Column::plain("of the"),
        Column::with_unit("x", "mm"),
        Column::with_unit("y", "mm"),
        Column::with_unit("z", "mm"),
    ];
    if framed {
        columns.push(Column::plain("members"));
    }
    columns.push(Column::plain("plate"));
    let rows = prints.pieces.iter().enumerate().map(|(i, piece)| {
        let size = piece.surface.bounds().map(|b| b.high - b.low);
        let length = |axis: usize| size.map_or(Cell::Empty, |s| Cell::number(s[axis], 1));
        let mut row = vec![
            Cell::count((i + 1) as f64),
            Cell::text(format!("{}.stl", piece.name)),
            Cell::text(piece.level.name()),
            length(0),
            length(1),
            length(2),
        ];
        if framed {
            row.push(match piece.level {
                Level::Frame => Cell::count(piece.members as f64),
                Level::Base | Level::Counter => Cell::Empty,
            });
        }
        row.push(
            prints
                .bed_of(i)
                .map_or(Cell::Empty, |bed| Cell::count(bed as f64)),
        );
        row
    });
    Table {
        name: "scale-model-pieces".to_owned(),
        title: "Pieces".to_owned(),
        rows: rows.collect(),
        columns,
    }
}
