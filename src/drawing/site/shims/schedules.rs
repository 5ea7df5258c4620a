//! The schedules of packs and levels on as many sheets as they take.

use super::ShimPlan;
use crate::drawing::Scale;
use crate::drawing::border::Frame;
use crate::drawing::schedule::{Grid, Portion, flow};
use crate::drawing::set::Drawn;

/// A schedule is no wider than this share of the sheet's room, so that the columns of a long one stand side by side.
const SHARE: f64 = 0.48;

/// The schedules laid out, sheet by sheet.
pub(super) fn laid(frame: &Frame, shown: &ShimPlan) -> (Vec<Grid>, Vec<Vec<Portion>>) {
    let room = frame.room(&[]);
    let grids = shown.schedules.iter();
    let grids = grids.filter(|(table, _)| !table.rows.is_empty());
    let grids: Vec<Grid> = grids
        .map(|(table, notes)| Grid::new(table, room.width() * SHARE).with_notes(notes))
        .collect();
    let sheets = if grids.is_empty() {
        Vec::new()
    } else {
        flow(&grids, &room)
    };
    (grids, sheets)
}

/// Draws one of their sheets.
pub(super) fn draw(frame: &Frame, shown: &ShimPlan, number: usize, title: &str) -> Option<Drawn> {
    let (grids, sheets) = laid(frame, shown);
    let scale = Scale::none();
    let mut page = frame.page(title, &scale, &[]);
    for portion in sheets.get(number)? {
        grids
            .get(portion.grid)?
            .draw(&mut page, portion.at, portion.part);
    }
    Some((page, scale))
}
