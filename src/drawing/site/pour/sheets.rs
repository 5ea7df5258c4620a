//! The sheets of the pour: the strip with the tables below it where they have room, else on sheets of their own.

use super::PourSheet;
use super::strip;
use crate::drawing::Scale;
use crate::drawing::border::Frame;
use crate::drawing::page::Page;
use crate::drawing::schedule::{Grid, Portion, flow};
use crate::drawing::set::{Drawn, Planned, Set};
use crate::geometry::Bounds2;
use crate::parts::Assembly;
use crate::plan::Plan;

/// Between the strip and the tables.
const GAP: f64 = 5.0;
/// No strip is higher: lines that are too steep hide what they say.
const HIGHEST: f64 = 170.0;

/// Where the strip and the tables lie.
struct Layout {
    notes: Vec<String>,
    grids: Vec<Grid>,
    /// On the first sheet; `None` without a forecast.
    strip: Option<Bounds2>,
    sheets: Vec<Vec<Portion>>,
}

impl Layout {
    fn new(shown: &PourSheet, frame: &Frame) -> Self {
        let room = frame.room(&shown.notes);
        let grids: Vec<Grid> = shown
            .tables
            .iter()
            .map(|(table, notes)| Grid::new(table, room.width()).with_notes(notes))
            .collect();
        let mut layout = Self {
            notes: shown.notes.clone(),
            grids,
            strip: None,
            sheets: Vec::new(),
        };
        if shown.strip.is_none() {
            layout.sheets = flow(&layout.grids, &room);
            return layout;
        }
        let below = Bounds2 {
            low: room.low,
            high: nalgebra::Point2::new(room.high.x, room.high.y - strip::LEAST - GAP),
        };
        let together = (below.height() > 0.0)
            .then(|| flow(&layout.grids, &below))
            .filter(|sheets| sheets.len() == 1);
        let whole = together.is_some();
        layout.sheets = together.unwrap_or_else(|| {
            let mut sheets = vec![Vec::new()];
            sheets.extend(flow(&layout.grids, &room));
            sheets
        });
        let height = if whole {
            strip::LEAST
        } else {
            room.height().min(HIGHEST)
        };
        layout.strip = Some(Bounds2 {
            low: nalgebra::Point2::new(room.low.x, room.high.y - height),
            high: room.high,
        });
        layout
    }

    fn title(&self, number: usize) -> &'static str {
        match (self.strip, number, self.sheets.len()) {
            (Some(_), 0, 1) => "Pour: hours, batches and setting clock",
            (Some(_), 0, _) => "Pour: the hours",
            _ => "Pour: batches and setting clock",
        }
    }
}

/// Which sheets there are.
pub fn planned(_: &Plan, _: &Assembly, frame: &Frame) -> Vec<Planned> {
    let Some(shown) = &frame.told().site.pour else {
        return Vec::new();
    };
    let layout = Layout::new(shown, frame);
    let one = |number| Planned {
        stem: "pour".to_owned(),
        title: layout.title(number).to_owned(),
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
    let mut page: Page = set.frame.page(layout.title(number), &scale, &layout.notes);
    if let (0, Some(strip), Some(area)) = (number, &shown.strip, &layout.strip) {
        strip::draw(&mut page, strip, area);
    }
    for portion in portions {
        let grid = layout.grids.get(portion.grid)?;
        grid.draw(&mut page, portion.at, portion.part);
    }
    Some((page, scale))
}
