//! The sheets of the order of work: bars first, then the checklist.

use super::bars::Bars;
use super::checklist::Checklist;
use super::values::WorkSheet;
use crate::drawing::Scale;
use crate::drawing::border::Frame;
use crate::drawing::set::{Drawn, Planned, Set};
use crate::parts::Assembly;
use crate::plan::Plan;

const BARS: &str = "Order of work: calendar";
const LIST: &str = "Order of work: checklist";

/// What stands under the heading of a checklist.
const HOW: &str = "Tick a step when all of it is done. In a framed step nothing goes on before every line is ticked and the foot is signed. \
                   Local code, licensed trades and each maker's own instructions decide; hours are invented defaults where marked so.";

/// Which sheets there are.
pub fn planned(_: &Plan, _: &Assembly, frame: &Frame) -> Vec<Planned> {
    let Some(work) = frame.told().site.work.as_ref() else {
        return Vec::new();
    };
    let (bars, list) = laid(work, frame);
    let bars = bars.map_or(0, |b| b.sheets());
    let bars = (0..bars).map(|_| named("work-calendar", BARS));
    let list = (0..list.sheets()).map(|_| named("work-checklist", LIST));
    bars.chain(list).collect()
}

fn named(stem: &str, title: &str) -> Planned {
    Planned {
        stem: stem.to_owned(),
        title: title.to_owned(),
        ..Planned::default()
    }
}

fn laid<'a>(work: &'a WorkSheet, frame: &Frame) -> (Option<Bars<'a>>, Checklist) {
    let bars = Bars::new(work, frame.room(&work.notes));
    (bars, Checklist::new(work, frame.room(&[HOW.to_owned()])))
}

/// Draws one of them; `None` for a sheet that there is not.
pub fn draw(set: &Set, number: usize) -> Option<Drawn> {
    let work = set.frame.told().site.work.as_ref()?;
    let scale = Scale::none();
    let (bars, list) = laid(work, set.frame);
    let before = bars.as_ref().map_or(0, Bars::sheets);
    if let Some(bars) = bars.filter(|_| number < before) {
        let mut page = set.frame.page(BARS, &scale, &work.notes);
        bars.draw(&mut page, number);
        return Some((page, scale));
    }
    let number = number.checked_sub(before).filter(|n| *n < list.sheets())?;
    let mut page = set.frame.page(LIST, &scale, &[HOW.to_owned()]);
    list.draw(&mut page, number);
    Some((page, scale))
}
