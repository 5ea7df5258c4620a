//! Which elevations the set has.

use super::panel_view::PanelView;
use super::parts::{Look, parts};
use super::stretch::Stretch;
use crate::drawing::border::Frame;
use crate::drawing::page::plain;
use crate::drawing::set::{Drawn, Entry, Planned, Set};
use crate::parts::Assembly;
use crate::plan::{Panel, PanelOf, Plan};

/// The name of the sheets of finished faces in the set.
pub const FINISHED: &str = "Finished elevations";
/// The name of the sheets of steel in the set.
pub const FRAMING: &str = "Framing elevations";

/// The sheets of an elevation of a face: several where it is long.
fn of_face(plan: &Plan, frame: &Frame, number: usize, look: Look) -> Vec<Planned> {
    let face = &plan.faces[number];
    let word = match look {
        Look::Finished => "finished",
        Look::Framing => "framing",
    };
    let listed = parts(plan, frame, number, look).into_iter().map(|window| {
        let name = capitalised(&plain(&face.name));
        let stem = format!("elevation-{}-{word}", file_part(&face.mark));
        Planned {
            stem: match window.number {
                _ if window.is_whole() => stem,
                number => format!("{stem}-part-{number}"),
            },
            title: format!("{name}: {word}{}", window.title()),
            face: Some(number),
            figures: Vec::new(),
        }
    });
    listed.collect()
}

/// The sheet of the steel of a bulkhead, the `count`th of its run.
fn of_bulkhead(plan: &Plan, panel: &Panel, count: usize) -> Option<Planned> {
    let run = plan.design.runs.get(panel.run)?;
    let name = capitalised(&plain(&run.name.value));
    let mark = file_part(&run.mark);
    Some(Planned {
        stem: format!("elevation-{mark}-bulkhead-{count}-framing"),
        title: format!("{name} run, bulkhead {count}: framing"),
        face: None,
        figures: Vec::new(),
    })
}

/// A sheet of the set, its place among those of the same face, or among those of bulkheads, and the sheets beside it.
struct Found<'a> {
    planned: &'a Planned,
    place: usize,
    before: Option<usize>,
    after: Option<usize>,
}

/// Finds a sheet in the list of the set.
fn found<'a>(set: &Set<'a>, chapter: &str, number: usize) -> Option<Found<'a>> {
    let entries = &set.contents.entries;
    let first = entries.iter().position(|e| e.chapter == chapter)?;
    let own = entries.get(first..)?;
    let entry = own.get(number).filter(|e| e.chapter == chapter)?;
    let face = entry.planned.face;
    let before = own.iter().take(number).rev();
    let sheet = |e: &Entry| (e.chapter == chapter).then_some(e.number);
    Some(Found {
        planned: &entry.planned,
        place: before.take_while(|e| e.planned.face == face).count(),
        before: number.checked_sub(1).and_then(|n| sheet(own.get(n)?)),
        after: own.get(number + 1).and_then(sheet),
    })
}

impl Found<'_> {
    /// The stretch of a face that the sheet shows, with the numbers of the sheets beside it.
    fn stretch(&self, set: &Set, face: usize, look: Look) -> Option<Stretch> {
        let windows = parts(set.plan, set.frame, face, look);
        let window = *windows.get(self.place)?;
        Some(Stretch {
            window,
            left: window.left().and(self.before),
            right: window.right().and(self.after),
        })
    }
}

/// The sheets of each face that somebody can stand in front of.
pub fn finished_planned(plan: &Plan, _assembly: &Assembly, frame: &Frame) -> Vec<Planned> {
    let faces = (0..plan.faces.len()).filter(|&f| !plan.faces[f].wall);
    faces
        .flat_map(|f| of_face(plan, frame, f, Look::Finished))
        .collect()
}

/// Draws one of them.
pub fn finished(set: &Set, number: usize) -> Option<Drawn> {
    let found = found(set, FINISHED, number)?;
    let face = found.planned.face?;
    let stretch = found.stretch(set, face, Look::Finished)?;
    super::finished::finished(set, face, &stretch, &found.planned.title)
}

/// The sheets of the steel of each face, then one for each bulkhead.
pub fn framing_planned(plan: &Plan, _assembly: &Assembly, frame: &Frame) -> Vec<Planned> {
    let faces = (0..plan.faces.len()).flat_map(|f| of_face(plan, frame, f, Look::Framing));
    let bulkheads = bulkheads(plan);
    faces
        .chain(bulkheads.filter_map(|(_, panel, count)| of_bulkhead(plan, panel, count)))
        .collect()
}

/// Draws one of them.
pub fn framing(set: &Set, number: usize) -> Option<Drawn> {
    let found = found(set, FRAMING, number)?;
    let title = &found.planned.title;
    if let Some(face) = found.planned.face {
        let of = PanelView::of_face(set.plan, face)?;
        let stretch = found.stretch(set, face, Look::Framing)?;
        return super::framing::framing(set, &of, &stretch, title);
    }
    let (panel, ..) = bulkheads(set.plan).nth(found.place)?;
    let of = PanelView::of_bulkhead(set.plan, panel)?;
    super::framing::framing(set, &of, &Stretch::whole(), title)
}

/// The bulkheads: number of the panel, the panel, and its count in its run from 1.
fn bulkheads(plan: &Plan) -> impl Iterator<Item = (usize, &Panel, usize)> {
    let panels = plan.panels.iter().enumerate();
    panels.filter_map(|(number, panel)| match panel.of {
        PanelOf::Bulkhead(count) if plan.design.runs.get(panel.run).is_some() => {
            Some((number, panel, count + 1))
        }
        _ => None,
    })
}

/// What of a mark is safe in a file name everywhere.
fn file_part(mark: &str) -> String {
    let kept = mark
        .chars()
        .filter(|c| c.is_ascii_alphanumeric() || *c == '-');
    kept.collect()
}

fn capitalised(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|c| c.to_uppercase().to_string());
    first.unwrap_or_default() + letters.as_str()
}
