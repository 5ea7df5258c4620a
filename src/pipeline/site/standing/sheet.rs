//! What the sheets of setting out show.

use super::setting_out::spell;
use crate::design::{FrameCorner, Taped};
use crate::drawing::site::setting_out::{
    MeasuredFrame, MeasuredRun, Peg, PushArrow, SettingOut, Stretch, StretchOf, Triangle,
};
use crate::geometry::Point2;
use crate::plan::{Follow, FrameAsBuilt, Plan};
use crate::site::standing::{SetLength, SetLengthOf, SquareMark, Standing};
use crate::table::{Cell, Column, Table};
use crate::units::{Length, Notation};

/// How far strings run past the corners, common practice: two feet, or 600 mm.
fn past(notation: Notation) -> f64 {
    match notation {
        Notation::Imperial => 609.6,
        Notation::Metric => 600.0,
    }
}

/// The values of the sheets.
pub(super) fn sheet(plan: &Plan, standing: &Standing) -> SettingOut {
    let pegs = standing.points.iter().map(|p| Peg {
        letter: p.letter.clone(),
        at: p.at,
    });
    let mut outline: Vec<(usize, usize)> = standing
        .points
        .iter()
        .enumerate()
        .filter_map(|(i, p)| Some((p.face?, i)))
        .collect();
    outline.sort_unstable();
    SettingOut {
        pegs: pegs.collect(),
        outline: outline.into_iter().map(|o| o.1).collect(),
        stretches: standing
            .lengths
            .iter()
            .map(|l| stretch(plan, standing, l))
            .collect(),
        triangles: standing
            .squares
            .iter()
            .filter_map(|s| triangle(standing, s))
            .collect(),
        past: past(plan.design.project.units),
        tables: vec![
            lengths(plan, standing),
            squares(plan, standing),
            heights(plan),
        ],
        measured: plan
            .as_built
            .as_ref()
            .and_then(|f| measured(plan, f, standing)),
    }
}

fn words(plan: &Plan, mm: f64) -> String {
    let units = plan.design.project.units;
    units.spell_with_unit(Length::millimetres(mm))
}

fn stretch(plan: &Plan, standing: &Standing, length: &SetLength) -> Stretch {
    let face = length
        .ends
        .map(|i| standing.points.get(i).and_then(|p| p.face));
    let count = plan.faces.len();
    let side = match face {
        [Some(a), Some(b)] if (a + 1) % count == b => plan.faces.get(a),
        [Some(a), Some(b)] if (b + 1) % count == a => plan.faces.get(b),
        _ => None,
    };
    Stretch {
        ends: length.ends,
        of: match length.of {
            SetLengthOf::Run(_, taped) if taped.is_diagonal() => StretchOf::Diagonal,
            SetLengthOf::Overall => StretchOf::Overall,
            SetLengthOf::Run(..) | SetLengthOf::Side(..) if side.is_some() => StretchOf::Side,
            SetLengthOf::Run(..) | SetLengthOf::Side(..) => StretchOf::Within,
        },
        words: words(plan, length.length),
        name: side.map_or_else(String::new, |f| f.side.name().to_owned()),
    }
}

fn triangle(standing: &Standing, mark: &SquareMark) -> Option<Triangle> {
    let at = |i: usize| standing.points.get(i).map(|p| p.at);
    let corner = at(mark.corner)?;
    let towards = |(point, leg): (usize, f64)| -> Option<Point2> {
        Some(corner + (at(point)? - corner).try_normalize(1e-9)? * leg)
    };
    Some(Triangle {
        corner: mark.corner,
        marks: [towards(mark.first)?, towards(mark.second)?],
    })
}

fn lengths(plan: &Plan, standing: &Standing) -> Table {
    let letter = |i: usize| standing.points[i].letter.as_str();
    let rows = standing.lengths.iter().map(|l| {
        vec![
            Cell::text(format!("{}–{}", letter(l.ends[0]), letter(l.ends[1]))),
            Cell::text(l.words(plan)),
            spell(plan, l.length),
        ]
    });
    Table {
        name: "lengths".to_owned(),
        title: "Sides and diagonals".to_owned(),
        columns: ["tape", "what", "length"].map(Column::plain).to_vec(),
        rows: rows.collect(),
    }
}

fn squares(plan: &Plan, standing: &Standing) -> Table {
    let letter = |i: usize| standing.points[i].letter.as_str();
    let leg = |(point, leg): (usize, f64)| {
        Cell::text(format!("{} towards {}", words(plan, leg), letter(point)))
    };
    let rows = standing.squares.iter().map(|s| {
        vec![
            Cell::text(letter(s.corner)),
            leg(s.first),
            leg(s.second),
            spell(plan, s.across),
        ]
    });
    Table {
        name: "squares".to_owned(),
        title: "Square by 3, 4 and 5".to_owned(),
        columns: ["at", "one mark", "other mark", "mark to mark"]
            .map(Column::plain)
            .to_vec(),
        rows: rows.collect(),
    }
}

fn heights(plan: &Plan) -> Table {
    let levels = &plan.levels;
    let rows = [
        ("underside of the frame", levels.frame_bottom),
        ("top of the frame", levels.frame_top),
        ("top of the counter", levels.counter_top),
    ];
    Table {
        name: "heights".to_owned(),
        title: "Heights above the datum".to_owned(),
        columns: ["what", "height"].map(Column::plain).to_vec(),
        rows: rows
            .map(|(what, mm)| vec![Cell::text(what), spell(plan, mm)])
            .to_vec(),
    }
}

/// The letter of a corner of a run.
fn letter(standing: &Standing, run: usize, corner: FrameCorner) -> String {
    let mut points = standing.points.iter();
    let point = points.find(|p| p.of.contains(&(run, corner)));
    point.map_or_else(String::new, |p| p.letter.clone())
}

/// The frame as measured; `None` where no run has a shape.
fn measured(plan: &Plan, frame: &FrameAsBuilt, standing: &Standing) -> Option<MeasuredFrame> {
    let planned = frame.planned().map_or(&plan.runs, |p| &p.runs);
    let solved = frame.runs.iter().zip(planned).enumerate();
    let solved = solved.filter(|(_, (r, _))| r.solved);
    let runs: Vec<MeasuredRun> = solved
        .map(|(i, (built, run))| {
            let (u, v) = (run.length, run.depth);
            let corners = [(0.0, 0.0), (u, 0.0), (u, v), (0.0, v)];
            let sides = [Taped::Working, Taped::Right, Taped::Seating, Taped::Left];
            let push = built.push;
            let away = built.corners[2] - built.corners[3];
            let sign = if push.towards() == "left" { -1.0 } else { 1.0 };
            let towards = away.try_normalize(1e-9).map(|d| d * sign);
            let least = plan.design.project.units.step().mm() / 2.0;
            MeasuredRun {
                planned: corners.map(|(u, v)| run.point(u, v)),
                built: built.corners,
                letters: FrameCorner::ALL.map(|c| letter(standing, i, c)),
                sides: sides.map(|t| {
                    let l = built.length(t);
                    format!(
                        "{} ({})",
                        words(plan, l.adjusted),
                        signed(plan, l.difference())
                    )
                }),
                push: towards
                    .filter(|_| push.by >= least)
                    .map(|towards| PushArrow {
                        corner: push.corner as usize,
                        towards,
                        words: format!("push {}", words(plan, push.by)),
                    }),
            }
        })
        .collect();
    (!runs.is_empty()).then(|| MeasuredFrame {
        runs,
        notes: notes(plan, frame),
        tables: vec![readings(plan, frame), corners(plan, frame, standing)],
    })
}

/// A difference with its sign.
fn signed(plan: &Plan, mm: f64) -> String {
    match words(plan, mm.abs()) {
        text if text.starts_with("0\"") || text.starts_with("0 mm") => "as planned".to_owned(),
        text if mm < 0.0 => format!("−{text}"),
        text => format!("+{text}"),
    }
}

fn notes(plan: &Plan, frame: &FrameAsBuilt) -> Vec<String> {
    let mut notes = Vec::new();
    for suspect in &frame.suspects {
        let run = &plan.design.runs[suspect.run].name.value;
        notes.push(format!(
            "Tape again: the {} of run '{run}' reads {}, the others and the plan make it {}. It is set aside.",
            suspect.taped.name(),
            words(plan, suspect.read),
            words(plan, suspect.others)
        ));
    }
    for (run, built) in plan.design.runs.iter().zip(&frame.runs) {
        if !built.solved {
            continue;
        }
        notes.push(format!(
            "Run '{}': diagonals differ by {}; to square it push the {} {} towards the {}, the {} held, before the boards go on.",
            run.name.value,
            words(plan, built.out_of_square().abs()),
            built.push.corner.name(),
            words(plan, built.push.by),
            built.push.towards(),
            built.push.held()
        ));
    }
    let follow = match &frame.follow {
        Follow::Measured(_) => {
            "Counter, edge forms, boards and template follow the frame as measured; steel, appliances and cutouts stay where the plan has them in their run."
        }
        Follow::AsPlanned => "The frame stands as planned.",
        Follow::Unsolved => "",
        Follow::TooFar { .. } | Follow::NoCounter(_) => {
            "Counter, edge forms, boards and template do not follow this frame: see the checks. They are drawn as planned."
        }
    };
    notes.push(follow.to_owned());
    notes
}

fn readings(plan: &Plan, frame: &FrameAsBuilt) -> Table {
    let solved = frame.runs.iter().enumerate().filter(|(_, r)| r.solved);
    let rows = solved.flat_map(|(i, run)| {
        Taped::ALL.into_iter().map(move |taped| {
            let l = run.length(taped);
            let read = l.read.map_or(Cell::Empty, |r| spell(plan, r));
            let aside = if l.aside { " (wrong?)" } else { "" };
            vec![
                Cell::text(format!(
                    "{}: {}",
                    plan.design.runs[i].name.value,
                    taped.name()
                )),
                Cell::text(format!("{}{aside}", read.spelt())),
                spell(plan, l.adjusted),
                spell(plan, l.planned),
                Cell::text(signed(plan, l.difference())),
            ]
        })
    });
    Table {
        name: "readings".to_owned(),
        title: "Read, fitted and planned".to_owned(),
        columns: ["what", "read", "fitted", "plan", "off"]
            .map(Column::plain)
            .to_vec(),
        rows: rows.collect(),
    }
}

fn corners(plan: &Plan, frame: &FrameAsBuilt, standing: &Standing) -> Table {
    let solved = frame.runs.iter().enumerate().filter(|(_, r)| r.solved);
    let rows = solved.flat_map(|(i, run)| {
        FrameCorner::ALL.into_iter().map(move |corner| {
            let raise = standing
                .raises
                .iter()
                .find(|r| r.run == i && r.corner == corner);
            vec![
                Cell::text(format!(
                    "{} {}: {}",
                    letter(standing, i, corner),
                    plan.design.runs[i].name.value,
                    corner.name()
                )),
                Cell::text(format!("{:.2}°", run.angle(corner).to_degrees())),
                spell(plan, run.off[corner as usize]),
                raise.map_or(Cell::Empty, |r| spell(plan, r.by)),
            ]
        })
    });
    Table {
        name: "corners".to_owned(),
        title: "Corners".to_owned(),
        columns: ["corner", "angle", "off the plan", "raise by"]
            .map(Column::plain)
            .to_vec(),
        rows: rows.collect(),
    }
}
