//! Cut lists as a table.

use super::CutList;
use super::stretch::{Stretch, What};
use crate::plan::Plan;
use crate::table::{Cell, Column, Table};
use crate::takeoff::cutting::Proof;
use crate::units::{Length, Notation};

/// The cutting order: stick by stick each cut from the stick's marked end on, with the piece or the scrap that it parts,
/// then the stick's offcut; last what no stick is long enough for.
pub(in crate::takeoff) fn table(plan: &Plan, lists: &[CutList]) -> Table {
    let columns = [
        Column::plain("section"),
        Column::plain("stick"),
        Column::plain("stick length"),
        Column::plain("cut"),
        Column::plain("mark"),
        Column::plain("kind"),
        Column::plain("where"),
        Column::plain("length"),
        Column::with_unit("length", "mm"),
        Column::plain("from"),
        Column::plain("cut at"),
        Column::plain("ends"),
        Column::plain("foot"),
    ];
    Table {
        name: "cut-list".to_owned(),
        title: "Cut list, in cutting order; pieces and cuts are measured from the marked end of the stick"
            .to_owned(),
        columns: columns.to_vec(),
        rows: lists.iter().flat_map(|list| rows(plan, list)).collect(),
    }
}

fn rows(plan: &Plan, list: &CutList) -> Vec<Vec<Cell>> {
    let row = Row { plan, list };
    let mut rows = Vec::new();
    for (stick, number) in list.sticks.iter().zip(1..) {
        let length = plan
            .design
            .project
            .units
            .spell_with_unit(list.stock[stick.stock].length);
        let head = |cut: Option<u32>| {
            [
                Cell::text(list.section.clone()),
                Cell::count(number),
                Cell::text(length.clone()),
                cut.map_or(Cell::Empty, Cell::count),
            ]
        };
        let mut cuts = 0;
        for stretch in list.stretches(stick) {
            let is_cut = !matches!(stretch.what, What::Offcut);
            cuts += u32::from(is_cut);
            rows.push(row.stretch(head(is_cut.then_some(cuts)), &stretch));
        }
    }
    rows.extend(list.too_long.iter().map(|&piece| row.unplaced(piece)));
    rows
}

struct Row<'a> {
    plan: &'a Plan,
    list: &'a CutList,
}

impl Row<'_> {
    fn stretch(&self, head: [Cell; 4], stretch: &Stretch) -> Vec<Cell> {
        let (what, how) = match stretch.what {
            What::Piece(cut) => (self.what(cut.piece), self.how(cut.piece, cut.reversed)),
            What::Scrap => left_over("scrap"),
            What::Offcut => left_over("offcut"),
        };
        let from = Cell::text(self.spell(stretch.from));
        let to = match stretch.what {
            What::Offcut => Cell::Empty,
            _ => Cell::text(self.spell(stretch.to)),
        };
        self.row(head, what, stretch.to - stretch.from, [from, to], how)
    }

    fn unplaced(&self, piece: usize) -> Vec<Cell> {
        let head = [
            Cell::text(self.list.section.clone()),
            Cell::text("none is long enough"),
            Cell::Empty,
            Cell::Empty,
        ];
        let length = self.list.pieces[piece].length;
        let at = [Cell::Empty, Cell::Empty];
        self.row(head, self.what(piece), length, at, self.how(piece, false))
    }

    fn what(&self, piece: usize) -> [Cell; 3] {
        let piece = &self.list.pieces[piece];
        let place = crate::takeoff::whereabouts(self.plan, piece.run, piece.face);
        [
            Cell::text(piece.name()),
            Cell::text(piece.kind.name()),
            Cell::text(place),
        ]
    }

    fn how(&self, piece: usize, reversed: bool) -> [Cell; 2] {
        let piece = &self.list.pieces[piece];
        let ends = piece.ends.map(super::End::name);
        let ends = if ends[0] == ends[1] {
            ends[0].to_owned()
        } else {
            ends.join(", ")
        };
        let foot = match (piece.aligned, reversed) {
            (false, _) => "",
            (true, false) => "near end",
            (true, true) => "far end",
        };
        [Cell::text(ends), Cell::text(foot)]
    }

    fn row(
        &self,
        head: [Cell; 4],
        what: [Cell; 3],
        length: u32,
        at: [Cell; 2],
        how: [Cell; 2],
    ) -> Vec<Cell> {
        let exact = self.plan.design.project.units.step() * f64::from(length);
        let mut row = Vec::from(head);
        row.extend(what);
        row.push(Cell::text(self.spell(length)));
        row.push(Cell::number(exact.mm(), 1));
        row.extend(at);
        row.extend(how);
        row
    }

    fn spell(&self, steps: u32) -> String {
        spelt(self.plan.design.project.units, steps)
    }
}

fn left_over(kind: &str) -> ([Cell; 3], [Cell; 2]) {
    let what = [Cell::Empty, Cell::text(kind), Cell::Empty];
    (what, [Cell::Empty, Cell::Empty])
}

fn spelt(notation: Notation, steps: u32) -> String {
    let length: Length = notation.step() * f64::from(steps);
    notation.spell_with_unit(length)
}

/// What each cut list comes to: sticks by length, waste, cost, and how good that is known to be.
pub(in crate::takeoff) fn summary(plan: &Plan, lists: &[CutList]) -> Table {
    let notation = plan.design.project.units;
    let columns = [
        Column::plain("section"),
        Column::plain("pieces"),
        Column::plain("sticks"),
        Column::plain("which"),
        Column::with_unit("waste", "%"),
        Column::with_unit("cost", &plan.design.buying.currency.to_string()),
        Column::plain("lower bound"),
        Column::plain("proof"),
        Column::plain("longest offcut"),
    ];
    let rows = lists.iter().map(|list| {
        let bought = list.stock.iter().zip(&list.counts).filter(|(_, n)| **n > 0);
        let which: Vec<_> = bought
            .map(|(s, n)| format!("{n} × {}", notation.spell_with_unit(s.length)))
            .collect();
        let bound = if list.is_priced() {
            crate::units::Money::cents(i64::try_from(list.bound).unwrap_or(i64::MAX)).to_string()
        } else {
            spelt(notation, u32::try_from(list.bound).unwrap_or(u32::MAX))
        };
        let proof = match list.proof {
            _ if !list.too_long.is_empty() => {
                format!("{} pieces longer than every stick", list.too_long.len())
            }
            Proof::Proven => "proven".to_owned(),
            Proof::Within { .. } => format!("within {:.2} %", list.gap() * 100.0),
        };
        let longest = if list.offcut.proven { ", proven" } else { "" };
        let offcut = format!("{}{longest}", spelt(notation, list.offcut.length));
        vec![
            Cell::text(list.section.clone()),
            Cell::count(list.pieces.len() as u32),
            Cell::count(list.sticks.len() as u32),
            Cell::text(which.join(", ")),
            Cell::number(list.waste() * 100.0, 1),
            list.money().map_or(Cell::Empty, |m| {
                Cell::number(m.in_cents() as f64 / 100.0, 2)
            }),
            Cell::text(bound),
            Cell::text(proof),
            Cell::text(offcut),
        ]
    });
    Table {
        name: "sticks".to_owned(),
        title: "Sticks to buy, the least that serve all pieces".to_owned(),
        columns: columns.to_vec(),
        rows: rows.collect(),
    }
}
