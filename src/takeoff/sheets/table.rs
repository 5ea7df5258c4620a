//! Sheet lists as tables.

use super::{Offcut, OnSheet, SheetList};
use crate::plan::Plan;
use crate::table::{Cell, Column, Table};
use crate::takeoff::whereabouts;
use crate::units::{Length, Money, Notation};

/// Every piece on its sheet, in the order that the pieces come free, then the sheet's offcuts; last what no sheet is large
/// enough for. A piece's place is that of its lower left corner, from the sheet's.
pub fn table(plan: &Plan, lists: &[SheetList]) -> Table {
    let columns = [
        Column::plain("material"),
        Column::plain("sheet"),
        Column::plain("sheet size"),
        Column::plain("mark"),
        Column::plain("kind"),
        Column::plain("where"),
        Column::plain("length"),
        Column::plain("width"),
        Column::plain("from left"),
        Column::plain("from bottom"),
        Column::plain("turned"),
        Column::plain("note"),
        Column::with_unit("length", "mm"),
        Column::with_unit("width", "mm"),
        Column::with_unit("from left", "mm"),
        Column::with_unit("from bottom", "mm"),
    ];
    Table {
        name: "sheet-layout".to_owned(),
        title: "Sheet layout: pieces and offcuts by the sheet, measured from its lower left corner"
            .to_owned(),
        columns: columns.to_vec(),
        rows: lists.iter().flat_map(|list| rows(plan, list)).collect(),
    }
}

fn rows(plan: &Plan, list: &SheetList) -> Vec<Vec<Cell>> {
    let row = Row { plan, list };
    let sheets = list.layouts.iter().zip(1..);
    let laid = sheets.flat_map(|(layout, number)| {
        let head = row.head(number, layout.stock);
        let pieces = layout
            .pieces
            .iter()
            .map(|p| row.piece(head.clone(), p.piece, Some(p)));
        let offcuts = layout.offcuts.iter().map(|o| row.offcut(head.clone(), o));
        pieces.chain(offcuts).collect::<Vec<_>>()
    });
    let unplaced = [
        Cell::text(list.material.clone()),
        Cell::text("none is large enough"),
        Cell::Empty,
    ];
    let left = list
        .too_large
        .iter()
        .map(|&p| row.piece(unplaced.clone(), p, None));
    laid.chain(left).collect()
}

struct Row<'a> {
    plan: &'a Plan,
    list: &'a SheetList,
}

impl Row<'_> {
    fn head(&self, number: u32, stock: usize) -> [Cell; 3] {
        [
            Cell::text(self.list.material.clone()),
            Cell::count(number),
            Cell::text(size(self.plan, self.list, stock)),
        ]
    }

    fn piece(&self, head: [Cell; 3], number: usize, on: Option<&OnSheet>) -> Vec<Cell> {
        let piece = &self.list.pieces[number];
        let turned = on.is_some_and(|p| p.turned);
        let what = [
            Cell::text(piece.name()),
            Cell::text(piece.what()),
            Cell::text(whereabouts(self.plan, piece.run, piece.face)),
        ];
        let sides = (piece.length, piece.width);
        let how = [
            Cell::text(if turned { "turned" } else { "" }),
            Cell::text(piece.note.clone()),
        ];
        self.row(head, what, sides, on.map(|p| p.at), how)
    }

    fn offcut(&self, head: [Cell; 3], offcut: &Offcut) -> Vec<Cell> {
        let what = [Cell::text("offcut"), Cell::Empty, Cell::Empty];
        self.row(
            head,
            what,
            offcut.size,
            Some(offcut.at),
            [Cell::Empty, Cell::Empty],
        )
    }

    fn row(
        &self,
        head: [Cell; 3],
        what: [Cell; 3],
        sides: (u32, u32),
        at: Option<(u32, u32)>,
        how: [Cell; 2],
    ) -> Vec<Cell> {
        let notation = self.plan.design.project.units;
        let lengths = [
            Some(sides.0),
            Some(sides.1),
            at.map(|a| a.0),
            at.map(|a| a.1),
        ];
        let spelt = lengths.map(|l| l.map_or(Cell::Empty, |l| Cell::text(spell(notation, l))));
        let exact = lengths.map(|l| {
            l.map_or(Cell::Empty, |l| {
                Cell::number((notation.step() * f64::from(l)).mm(), 1)
            })
        });
        let mut row = Vec::from(head);
        row.extend(what);
        row.extend(spelt);
        row.extend(how);
        row.extend(exact);
        row
    }
}

fn size(plan: &Plan, list: &SheetList, stock: usize) -> String {
    let sheet = &list.stock[stock];
    let spell = |l: Length| plan.design.project.units.spell_with_unit(l);
    format!("{} × {}", spell(sheet.length), spell(sheet.width))
}

fn spell(notation: Notation, steps: u32) -> String {
    notation.spell_with_unit(notation.step() * f64::from(steps))
}

/// What each sheet list comes to: sheets by size, waste, cost, and how good that is known to be.
pub fn summary(plan: &Plan, lists: &[SheetList]) -> Table {
    let columns = [
        Column::plain("material"),
        Column::plain("pieces"),
        Column::plain("sheets"),
        Column::plain("which"),
        Column::with_unit("waste", "%"),
        Column::with_unit("cost", &plan.design.buying.currency.to_string()),
        Column::plain("lower bound"),
        Column::plain("proof"),
    ];
    let rows = lists.iter().map(|list| {
        let bought = (0..list.stock.len()).filter(|s| list.counts[*s] > 0);
        let which: Vec<_> = bought
            .map(|s| format!("{} × {}", list.counts[s], size(plan, list, s)))
            .collect();
        let money = |cents: u64| Money::cents(i64::try_from(cents).unwrap_or(i64::MAX));
        let bound = list.is_priced().then(|| money(list.bound).to_string());
        let proof = if !list.too_large.is_empty() {
            format!("{} pieces larger than every sheet", list.too_large.len())
        } else if list.cost == list.bound {
            "proven".to_owned()
        } else {
            format!("within {:.1} %", list.gap() * 100.0)
        };
        vec![
            Cell::text(list.material.clone()),
            Cell::count(list.pieces.len() as u32),
            Cell::count(list.layouts.len() as u32),
            Cell::text(which.join(", ")),
            Cell::number(list.waste() * 100.0, 1),
            list.money().map_or(Cell::Empty, |m| {
                Cell::number(m.in_cents() as f64 / 100.0, 2)
            }),
            bound.map_or(Cell::Empty, Cell::text),
            Cell::text(proof),
        ]
    });
    Table {
        name: "sheets".to_owned(),
        title: "Sheets to buy".to_owned(),
        columns: columns.to_vec(),
        rows: rows.collect(),
    }
}
