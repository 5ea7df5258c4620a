//! The tables of setting out.

use crate::plan::Plan;
use crate::site::standing::Standing;
use crate::table::{Cell, Column, Table};
use crate::units::Length;

/// Points, lengths between them and right angles.
pub(super) fn tables(plan: &Plan, standing: &Standing) -> Vec<Table> {
    vec![
        points(plan, standing),
        lengths(plan, standing),
        squares(plan, standing),
    ]
}

/// A length as the drawings spell it.
pub(super) fn spell(plan: &Plan, mm: f64) -> Cell {
    let units = plan.design.project.units;
    Cell::text(units.spell_with_unit(Length::millimetres(mm)))
}

fn points(plan: &Plan, standing: &Standing) -> Table {
    let rows = standing.points.iter().map(|p| {
        vec![
            Cell::text(p.letter.clone()),
            Cell::text(p.words(plan)),
            spell(plan, p.at.x),
            spell(plan, p.at.y),
            Cell::number(p.at.x, 2),
            Cell::number(p.at.y, 2),
        ]
    });
    Table {
        name: "setting-out-points".to_owned(),
        title:
            "Corner points of the frame, from A along the first run's working side and away from it"
                .to_owned(),
        columns: vec![
            Column::plain("point"),
            Column::plain("corner"),
            Column::plain("along"),
            Column::plain("away"),
            Column::with_unit("along", "mm"),
            Column::with_unit("away", "mm"),
        ],
        rows: rows.collect(),
    }
}

fn lengths(plan: &Plan, standing: &Standing) -> Table {
    let letter = |i: usize| Cell::text(standing.points[i].letter.clone());
    let rows = standing.lengths.iter().map(|l| {
        vec![
            letter(l.ends[0]),
            letter(l.ends[1]),
            Cell::text(l.words(plan)),
            spell(plan, l.length),
            Cell::number(l.length, 2),
        ]
    });
    Table {
        name: "setting-out".to_owned(),
        title: "Sides and diagonals of the frame as planned".to_owned(),
        columns: vec![
            Column::plain("from"),
            Column::plain("to"),
            Column::plain("what"),
            Column::plain("length"),
            Column::with_unit("length", "mm"),
        ],
        rows: rows.collect(),
    }
}

fn squares(plan: &Plan, standing: &Standing) -> Table {
    let letter = |i: usize| Cell::text(standing.points[i].letter.clone());
    let rows = standing.squares.iter().map(|s| {
        vec![
            letter(s.corner),
            letter(s.first.0),
            spell(plan, s.first.1),
            letter(s.second.0),
            spell(plan, s.second.1),
            spell(plan, s.across),
            Cell::number(s.first.1, 2),
            Cell::number(s.second.1, 2),
            Cell::number(s.across, 2),
        ]
    });
    Table {
        name: "setting-out-squares".to_owned(),
        title:
            "Right angles by 3, 4 and 5: a mark on each side from the corner, and from mark to mark"
                .to_owned(),
        columns: vec![
            Column::plain("corner"),
            Column::plain("towards"),
            Column::plain("mark"),
            Column::plain("and towards"),
            Column::plain("mark there"),
            Column::plain("mark to mark"),
            Column::with_unit("first leg", "mm"),
            Column::with_unit("second leg", "mm"),
            Column::with_unit("across", "mm"),
        ],
        rows: rows.collect(),
    }
}
