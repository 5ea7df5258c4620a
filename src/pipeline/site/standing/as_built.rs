//! The tables of the frame as measured.

use super::setting_out::spell;
use crate::design::{FrameCorner, Taped};
use crate::plan::{FrameAsBuilt, Plan, RunAsBuilt};
use crate::site::standing::Raise;
use crate::table::{Cell, Column, Table};

/// Lengths, corners and runs; runs that were not measured are left out.
pub(super) fn tables(plan: &Plan, frame: &FrameAsBuilt, raises: &[Raise]) -> Vec<Table> {
    vec![
        lengths(plan, frame),
        corners(plan, frame, raises),
        squares(plan, frame),
    ]
}

fn measured(frame: &FrameAsBuilt) -> impl Iterator<Item = (usize, &RunAsBuilt)> {
    let runs = frame.runs.iter().enumerate();
    runs.filter(|(_, r)| r.measured.is_some())
}

fn run_name(plan: &Plan, run: usize) -> Cell {
    Cell::text(plan.design.runs[run].name.value.clone())
}

fn lengths(plan: &Plan, frame: &FrameAsBuilt) -> Table {
    let rows = measured(frame).flat_map(|(i, run)| {
        Taped::ALL.into_iter().map(move |taped| {
            let l = run.length(taped);
            let fitted = |value: f64| {
                if run.solved {
                    Cell::number(value, 3)
                } else {
                    Cell::Empty
                }
            };
            vec![
                run_name(plan, i),
                Cell::text(taped.name()),
                l.read.map_or(Cell::Empty, |r| spell(plan, r)),
                if run.solved {
                    spell(plan, l.adjusted)
                } else {
                    Cell::Empty
                },
                spell(plan, l.planned),
                l.read.map_or(Cell::Empty, |r| Cell::number(r, 3)),
                fitted(l.adjusted),
                l.residual().map_or(Cell::Empty, fitted),
                Cell::number(l.planned, 3),
                fitted(l.difference()),
                fitted(l.checked * 100.0),
                Cell::text(remark(run, taped)),
            ]
        })
    });
    Table {
        name: "as-built".to_owned(),
        title: "The frame as measured: readings, fitted by least squares, beside the plan"
            .to_owned(),
        columns: vec![
            Column::plain("run"),
            Column::plain("what"),
            Column::plain("read"),
            Column::plain("fitted"),
            Column::plain("plan"),
            Column::with_unit("read", "mm"),
            Column::with_unit("fitted", "mm"),
            Column::with_unit("fitted less read", "mm"),
            Column::with_unit("plan", "mm"),
            Column::with_unit("fitted less plan", "mm"),
            Column::with_unit("checked by the others", "%"),
            Column::plain("remark"),
        ],
        rows: rows.collect(),
    }
}

fn remark(run: &RunAsBuilt, taped: Taped) -> &'static str {
    let l = run.length(taped);
    match l.read {
        _ if l.aside => "likely wrong: set aside, the plan stands in for it; tape it again",
        None => "not measured",
        Some(_) if !run.solved => "too few readings for a shape",
        Some(_) => "",
    }
}

fn corners(plan: &Plan, frame: &FrameAsBuilt, raises: &[Raise]) -> Table {
    let rows = measured(frame).flat_map(|(i, run)| {
        FrameCorner::ALL.into_iter().map(move |corner| {
            let raise = raises.iter().find(|r| r.run == i && r.corner == corner);
            let at = run.corner(corner);
            let shape = |value: f64, decimals: u8| {
                if run.solved {
                    Cell::number(value, decimals)
                } else {
                    Cell::Empty
                }
            };
            vec![
                run_name(plan, i),
                Cell::text(corner.name()),
                shape(at.x, 3),
                shape(at.y, 3),
                shape(run.angle(corner).to_degrees(), 3),
                shape(run.off[corner as usize], 3),
                raise.map_or(Cell::Empty, |r| Cell::number(r.height, 2)),
                raise.map_or(Cell::Empty, |r| Cell::number(r.by, 2)),
                raise.map_or(Cell::Empty, |r| spell(plan, r.by)),
            ]
        })
    });
    Table {
        name: "as-built-corners".to_owned(),
        title: "Corners of the frame as measured: where, how square, how high".to_owned(),
        columns: vec![
            Column::plain("run"),
            Column::plain("corner"),
            Column::with_unit("along", "mm"),
            Column::with_unit("away", "mm"),
            Column::with_unit("angle", "deg"),
            Column::with_unit("from its planned place", "mm"),
            Column::with_unit("height", "mm"),
            Column::with_unit("raise by", "mm"),
            Column::plain("raise by"),
        ],
        rows: rows.collect(),
    }
}

fn squares(plan: &Plan, frame: &FrameAsBuilt) -> Table {
    let rows = measured(frame)
        .filter(|(_, run)| run.solved)
        .map(|(i, run)| {
            let push = run.push;
            vec![
                run_name(plan, i),
                spell(plan, run.out_of_square().abs()),
                Cell::number(run.out_of_square(), 3),
                Cell::text(push.corner.name()),
                Cell::text(push.towards()),
                spell(plan, push.by),
                Cell::number(push.by, 3),
            ]
        });
    Table {
        name: "as-built-squares".to_owned(),
        title:
            "How far each run is out of square, and what squares it; the other long side is held"
                .to_owned(),
        columns: vec![
            Column::plain("run"),
            Column::plain("diagonals differ by"),
            Column::with_unit("from working left less the other", "mm"),
            Column::plain("push the"),
            Column::plain("towards the"),
            Column::plain("by"),
            Column::with_unit("by", "mm"),
        ],
        rows: rows.collect(),
    }
}
