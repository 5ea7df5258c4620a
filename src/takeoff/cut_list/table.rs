//! Cut lists as a table.

use super::{CutList, CutStick, Placed};
use crate::plan::Plan;
use crate::table::{Cell, Column, Table};
use crate::takeoff::cutting::Proof;
use crate::units::{Length, Notation};

/// The cutting order: one row a piece, stick by stick, each cut measured from the stick's marked end.
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
        Column::plain("cut at"),
        Column::plain("ends"),
        Column::plain("foot"),
        Column::plain("offcut"),
    ];
    let rows = lists.iter().flat_map(|list| {
        let sticks = list.sticks.iter().zip(1..);
        let cut = sticks.flat_map(|(stick, number)| {
            let cuts = stick.cuts.iter().zip(1..);
            cuts.map(move |(cut, order)| row(plan, list, Some((stick, number)), (*cut, order)))
        });
        let long = list.too_long.iter().map(|&piece| {
            let unplaced = Placed {
                piece,
                start: 0,
                reversed: false,
            };
            row(plan, list, None, (unplaced, 0))
        });
        cut.chain(long).collect::<Vec<_>>()
    });
    Table {
        name: "cut-list".to_owned(),
        title: "Cut list, in cutting order; cuts are measured from the marked end of the stick"
            .to_owned(),
        columns: columns.to_vec(),
        rows: rows.collect(),
    }
}

fn row(
    plan: &Plan,
    list: &CutList,
    stick: Option<(&CutStick, u32)>,
    (cut, order): (Placed, u32),
) -> Vec<Cell> {
    let notation = plan.design.project.units;
    let spell = |steps: u32| spelt(notation, steps);
    let piece = &list.pieces[cut.piece];
    let ends = piece.ends.map(super::End::name);
    let ends = if ends[0] == ends[1] {
        ends[0].to_owned()
    } else {
        ends.join(", ")
    };
    let is_last = stick.is_some_and(|(s, _)| s.cuts.len() as u32 == order);
    let foot = match (piece.aligned, cut.reversed) {
        (false, _) => "",
        (true, false) => "near end",
        (true, true) => "far end",
    };
    vec![
        Cell::text(list.section.clone()),
        stick.map_or(Cell::text("none is long enough"), |(_, n)| Cell::count(n)),
        stick.map_or(Cell::Empty, |(s, _)| {
            Cell::text(notation.spell_with_unit(list.stock[s.stock].length))
        }),
        stick.map_or(Cell::Empty, |_| Cell::count(order)),
        Cell::text(piece.name()),
        Cell::text(piece.kind.name()),
        Cell::text(crate::takeoff::whereabouts(plan, piece.run, piece.face)),
        Cell::text(spell(piece.length)),
        Cell::number((notation.step() * f64::from(piece.length)).mm(), 1),
        stick.map_or(Cell::Empty, |_| Cell::text(spell(cut.start + piece.length))),
        Cell::text(ends),
        Cell::text(foot),
        if is_last {
            stick.map_or(Cell::Empty, |(s, _)| Cell::text(spell(s.offcut)))
        } else {
            Cell::Empty
        },
    ]
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
