//! The sheets: each figure with its tables beside it, what does not fit there on sheets of its own.

use super::{MeasuredFrame, SettingOut, frame_figure, measured_figure};
use crate::drawing::Scale;
use crate::drawing::border::Frame;
use crate::drawing::fit::{Fit, Margins};
use crate::drawing::schedule::{Grid, Portion, flow};
use crate::drawing::set::{Drawn, Planned, Set};
use crate::geometry::{Bounds2, Point2};
use crate::parts::Assembly;
use crate::plan::Plan;
use crate::table::Table;

/// The tables take no more than this share of the width, and are no wider, millimetres.
const SHARE: f64 = 0.46;
const WIDEST: f64 = 150.0;
/// Between figure and tables, and between tables.
const GAP: f64 = 7.0;
/// Round the figure, for its lettering.
const AIR: Margins = Margins {
    left: 14.0,
    right: 14.0,
    below: 9.0,
    above: 9.0,
};

/// The two kinds of figure.
#[derive(Clone, Copy)]
enum Part<'a> {
    SetOut(&'a SettingOut),
    Measured(&'a MeasuredFrame),
}

/// One sheet.
struct Laid<'a> {
    part: Part<'a>,
    /// True where the figure stands.
    figure: bool,
    tables: Vec<Portion>,
}

const SET_OUT: &str = "Strings on battens mark the sides of the frame, out to out; pegs stand under its corners, battens clear of the work. Lay A and B first, square up by the marks of 3, 4 and 5, then tape both diagonals \
                       of each run: equal within 1/8 to 1/4 in (3 to 6 mm) is square enough, common practice.";
const BOARDS: &str = "Dimensions of the steel frame; boards and coats come outside it. Look for pipes and cables before driving a peg.";

impl Part<'_> {
    fn tables(&self) -> &[Table] {
        match self {
            Self::SetOut(s) => &s.tables,
            Self::Measured(m) => &m.tables,
        }
    }

    fn notes(&self) -> Vec<String> {
        match self {
            Self::SetOut(_) => vec![SET_OUT.to_owned(), BOARDS.to_owned()],
            Self::Measured(m) => m.notes.clone(),
        }
    }

    fn title(&self) -> &'static str {
        match self {
            Self::SetOut(_) => "Setting out",
            Self::Measured(_) => "The frame as measured",
        }
    }

    fn stem(&self) -> &'static str {
        match self {
            Self::SetOut(_) => "setting-out",
            Self::Measured(_) => "frame-as-measured",
        }
    }
}

/// The room of a part's sheets; one line is kept for what the scale of the figure lets it say.
fn room(frame: &Frame, part: Part) -> Bounds2 {
    let mut room = frame.room(&part.notes());
    room.high.y -= 4.0;
    room
}

/// How wide the tables beside a figure may be.
fn table_width(room: &Bounds2) -> f64 {
    (room.width() * SHARE).min(WIDEST)
}

fn grids(part: Part, room: &Bounds2) -> Vec<Grid> {
    let width = table_width(room);
    part.tables().iter().map(|t| Grid::new(t, width)).collect()
}

/// All sheets of the values, in order.
fn laid<'a>(frame: &Frame, values: &'a SettingOut) -> Vec<Laid<'a>> {
    let measured = values.measured.as_ref().map(Part::Measured);
    let parts = std::iter::once(Part::SetOut(values)).chain(measured);
    parts.flat_map(|part| lay(frame, part)).collect()
}

fn lay<'a>(frame: &Frame, part: Part<'a>) -> Vec<Laid<'a>> {
    let room = room(frame, part);
    let grids = grids(part, &room);
    let left = room.high.x - table_width(&room);
    let mut top = room.high.y;
    let mut beside = Vec::new();
    let mut rest = 0;
    for (i, grid) in grids.iter().enumerate() {
        if top - grid.height() < room.low.y {
            break;
        }
        beside.push(Portion {
            grid: i,
            part: grid.whole(),
            at: Point2::new(left, top),
        });
        top -= grid.height() + GAP;
        rest = i + 1;
    }
    let mut sheets = vec![Laid {
        part,
        figure: true,
        tables: beside,
    }];
    if rest < grids.len() {
        let more = flow(&grids[rest..], &room).into_iter();
        sheets.extend(more.map(|portions| {
            Laid {
                part,
                figure: false,
                tables: portions
                    .into_iter()
                    .map(|p| Portion {
                        grid: p.grid + rest,
                        ..p
                    })
                    .collect(),
            }
        }));
    }
    sheets
}

/// Which sheets there are.
pub fn planned(_: &Plan, _: &Assembly, frame: &Frame) -> Vec<Planned> {
    let Some(values) = &frame.told().site.setting_out else {
        return Vec::new();
    };
    let sheets = laid(frame, values);
    sheets
        .iter()
        .map(|sheet| {
            let tables = if sheet.figure { "" } else { ": tables" };
            Planned {
                stem: sheet.part.stem().to_owned(),
                title: format!("{}{tables}", sheet.part.title()),
                face: None,
                figures: Vec::new(),
            }
        })
        .collect()
}

/// Draws one of them; `None` for a sheet that there is not.
pub fn draw(set: &Set, within: usize) -> Option<Drawn> {
    let values = set.frame.told().site.setting_out.as_ref()?;
    let sheets = laid(set.frame, values);
    let sheet = sheets.get(within)?;
    let entry = set.entry(super::CHAPTER, within)?;
    let room = room(set.frame, sheet.part);
    let fit = sheet.figure.then(|| fit(set.frame, sheet, &room)).flatten();
    let mut notes = sheet.part.notes();
    if let (Part::Measured(m), Some(fit)) = (sheet.part, &fit) {
        let times = measured_figure::times(m, fit.scale.factor);
        notes.push(format!(
            "Thick lines: the frame as measured, its differences from the plan (thin lines) drawn {times} times as large."
        ));
    }
    let scale = fit.as_ref().map_or_else(Scale::none, |f| f.scale.clone());
    let mut page = set.frame.page(&entry.planned.title, &scale, &notes);
    let grids = grids(sheet.part, &room);
    for portion in &sheet.tables {
        if let Some(grid) = grids.get(portion.grid) {
            grid.draw(&mut page, portion.at, portion.part);
        }
    }
    if let Some(fit) = &fit {
        match sheet.part {
            Part::SetOut(s) => frame_figure::draw(&mut page, s, fit),
            Part::Measured(m) => measured_figure::draw(&mut page, m, fit),
        }
    }
    Some((page, scale))
}

/// Where the figure lies: left of its tables.
fn fit(frame: &Frame, sheet: &Laid, room: &Bounds2) -> Option<Fit> {
    let area = match sheet.part {
        Part::SetOut(s) => frame_figure::area(s),
        Part::Measured(m) => measured_figure::area(m),
    }?;
    let mut free = *room;
    if !sheet.tables.is_empty() {
        free.high.x -= table_width(room) + GAP;
    }
    Some(Fit::new(frame.notation(), &area, &free, AIR))
}
