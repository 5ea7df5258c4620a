//! The sheets of the pour: the strip with the tables below it where they have room, else on sheets of their own.

use super::PourSheet;
use super::strip;
use crate::drawing::Scale;
use crate::drawing::border::Frame;
use crate::drawing::page::Page;
use crate::drawing::schedule::{Grid, Portion, flow};
use crate::drawing::set::{Drawn, Planned, Set};
use crate::geometry::{Bounds2, Point2};
use crate::parts::Assembly;
use crate::plan::Plan;

/// Between the strip and the tables.
const GAP: f64 = 6.0;
/// Between the notes and a table below them.
const HEAD: f64 = 4.0;
/// No strip is higher: lines that are too steep hide what they say.
const HIGHEST: f64 = 170.0;

/// Where the strip and the tables lie.
struct Layout {
    grids: Vec<Grid>,
    /// On the first sheet; `None` without a forecast.
    strip: Option<Bounds2>,
    sheets: Vec<Vec<Portion>>,
}

impl Layout {
    fn new(shown: &PourSheet, frame: &Frame) -> Self {
        let room = frame.room(&shown.notes);
        let under = |top: f64| Bounds2 {
            low: room.low,
            high: Point2::new(room.high.x, top),
        };
        let tables = shown.tables.iter();
        let grids: Vec<Grid> = tables
            .map(|(table, notes)| Grid::new(table, room.width()).with_notes(notes))
            .collect();
        let all = under(room.high.y - HEAD);
        if shown.strip.is_none() {
            let sheets = flow(&grids, &all);
            return Self {
                grids,
                strip: None,
                sheets,
            };
        }
        let (first, foot) = below_strip(&grids, &under(room.high.y - strip::LEAST - GAP));
        // What is left over goes to the strip, and the tables move down.
        let taken = if first.is_empty() { 0.0 } else { foot };
        let height = (room.height() - taken).clamp(strip::LEAST.min(room.height()), HIGHEST);
        let down = room.high.y - height - GAP - (room.high.y - strip::LEAST - GAP);
        let count = first.iter().map(|p| p.grid + 1).max().unwrap_or(0);
        let moved = first.into_iter().map(|p| Portion {
            at: Point2::new(p.at.x, p.at.y + down),
            ..p
        });
        let mut sheets: Vec<Vec<Portion>> = vec![moved.collect()];
        if let Some(rest) = grids.get(count..).filter(|r| !r.is_empty()) {
            let later = flow(rest, &all).into_iter().map(|sheet| {
                let shifted = sheet.into_iter().map(|p| Portion {
                    grid: p.grid + count,
                    ..p
                });
                shifted.collect()
            });
            sheets.extend(later);
        }
        Self {
            grids,
            strip: Some(Bounds2 {
                low: Point2::new(room.low.x, room.high.y - height),
                high: room.high,
            }),
            sheets,
        }
    }

    /// What a sheet shows: the hours on the first one, and its tables by their names.
    fn title(&self, shown: &PourSheet, number: usize) -> String {
        let hours = self.strip.filter(|_| number == 0).map(|_| "hours");
        let portions = self.sheets.get(number).into_iter().flatten();
        let tables = portions.filter_map(|p| shown.tables.get(p.grid));
        let mut names: Vec<&str> = hours.into_iter().collect();
        names.extend(tables.map(|(table, _)| table.name.as_str()));
        names.dedup();
        format!("Pour: {}", names.join(", "))
    }
}

/// The first tables that lie below the strip on one sheet, and the height that they take with the gap above.
fn below_strip(grids: &[Grid], area: &Bounds2) -> (Vec<Portion>, f64) {
    if area.height() <= 0.0 {
        return (Vec::new(), 0.0);
    }
    let lay = |count: usize| {
        let laid = flow(grids.get(..count)?, area);
        laid.into_iter()
            .next_back()
            .filter(|_| flow(&grids[..count], area).len() == 1)
    };
    let most = (1..=grids.len()).rev().find_map(lay).unwrap_or_default();
    let foot = most.iter().filter_map(|p| {
        let grid = grids.get(p.grid)?;
        Some(area.high.y - p.at.y + grid.height_of(p.part))
    });
    let height = foot.fold(0.0, f64::max);
    (most, height + GAP)
}

/// Which sheets there are.
pub fn planned(_: &Plan, _: &Assembly, frame: &Frame) -> Vec<Planned> {
    let Some(shown) = &frame.told().site.pour else {
        return Vec::new();
    };
    let layout = Layout::new(shown, frame);
    let one = |number| Planned {
        stem: "pour".to_owned(),
        title: layout.title(shown, number),
        ..Planned::default()
    };
    (0..layout.sheets.len()).map(one).collect()
}

/// Draws one of them; `None` for a sheet that there is not.
pub fn draw(set: &Set, number: usize) -> Option<Drawn> {
    let shown = set.frame.told().site.pour.as_ref()?;
    let layout = Layout::new(shown, set.frame);
    let portions = layout.sheets.get(number)?;
    let scale = Scale::none();
    let mut page: Page = set
        .frame
        .page(&layout.title(shown, number), &scale, &shown.notes);
    if let (0, Some(strip), Some(area)) = (number, &shown.strip, &layout.strip) {
        strip::draw(&mut page, strip, area);
    }
    for portion in portions {
        let grid = layout.grids.get(portion.grid)?;
        grid.draw(&mut page, portion.at, portion.part);
    }
    Some((page, scale))
}
