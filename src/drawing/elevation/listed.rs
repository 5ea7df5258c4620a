//! Which elevations the set has.

use super::panel_view::PanelView;
use super::parts::{Look, parts};
use super::stretch::Stretch;
use super::window::Window;
use crate::drawing::border::Frame;
use crate::drawing::page::plain;
use crate::drawing::set::{Drawn, Planned, Set};
use crate::parts::Assembly;
use crate::plan::{Panel, PanelOf, Plan};

/// The name of the sheets of finished faces in the set.
pub const FINISHED: &str = "Finished elevations";
/// The name of the sheets of steel in the set.
pub const FRAMING: &str = "Framing elevations";

/// One sheet: what is told of it, the panel where it shows a bulkhead, and what of the elevation it shows.
struct Listed {
    planned: Planned,
    bulkhead: Option<usize>,
    window: Window,
}

/// The sheets of an elevation of a face: several where it is long.
fn of_face(plan: &Plan, frame: &Frame, number: usize, look: Look) -> Vec<Listed> {
    let face = &plan.faces[number];
    let word = match look {
        Look::Finished => "finished",
        Look::Framing => "framing",
    };
    let listed = parts(plan, frame, number, look).into_iter().map(|window| {
        let name = capitalised(&plain(&face.name));
        let stem = format!("elevation-{}-{word}", file_part(&face.mark));
        Listed {
            planned: Planned {
                stem: match window.number {
                    _ if window.is_whole() => stem,
                    number => format!("{stem}-part-{number}"),
                },
                title: format!("{name}: {word}{}", window.title()),
                face: Some(number),
                figures: Vec::new(),
            },
            bulkhead: None,
            window,
        }
    });
    listed.collect()
}

fn all_finished(plan: &Plan, frame: &Frame) -> Vec<Listed> {
    let faces = (0..plan.faces.len()).filter(|&f| !plan.faces[f].wall);
    faces
        .flat_map(|f| of_face(plan, frame, f, Look::Finished))
        .collect()
}

fn all_framing(plan: &Plan, frame: &Frame) -> Vec<Listed> {
    let faces = (0..plan.faces.len()).flat_map(|f| of_face(plan, frame, f, Look::Framing));
    let bulkheads = bulkheads(plan).filter_map(|(number, panel, count)| {
        let run = plan.design.runs.get(panel.run)?;
        let name = capitalised(&plain(&run.name.value));
        let mark = file_part(&run.mark);
        let planned = Planned {
            stem: format!("elevation-{mark}-bulkhead-{count}-framing"),
            title: format!("{name} run, bulkhead {count}: framing"),
            face: None,
            figures: Vec::new(),
        };
        Some(Listed {
            planned,
            bulkhead: Some(number),
            window: Window::whole(),
        })
    });
    faces.chain(bulkheads).collect()
}

fn planned(listed: Vec<Listed>) -> Vec<Planned> {
    listed.into_iter().map(|l| l.planned).collect()
}

/// The stretch that a sheet shows, with the numbers of the sheets beside it.
fn stretch(set: &Set, chapter: &str, number: usize, window: Window) -> Stretch {
    let sheet = |within: Option<usize>| Some(set.entry(chapter, within?)?.number);
    Stretch {
        window,
        left: window.left().and_then(|_| sheet(number.checked_sub(1))),
        right: window.right().and_then(|_| sheet(Some(number + 1))),
    }
}

/// The sheets of each face that somebody can stand in front of.
pub fn finished_planned(plan: &Plan, _assembly: &Assembly, frame: &Frame) -> Vec<Planned> {
    planned(all_finished(plan, frame))
}

/// Draws one of them.
pub fn finished(set: &Set, number: usize) -> Option<Drawn> {
    let listed = all_finished(set.plan, set.frame);
    let Listed {
        planned, window, ..
    } = listed.get(number)?;
    let stretch = stretch(set, FINISHED, number, *window);
    super::finished::finished(set, planned.face?, &stretch, &planned.title)
}

/// The sheets of the steel of each face, then one for each bulkhead.
pub fn framing_planned(plan: &Plan, _assembly: &Assembly, frame: &Frame) -> Vec<Planned> {
    planned(all_framing(plan, frame))
}

/// Draws one of them.
pub fn framing(set: &Set, number: usize) -> Option<Drawn> {
    let listed = all_framing(set.plan, set.frame);
    let Listed {
        planned,
        bulkhead,
        window,
    } = listed.get(number)?;
    let of = match (planned.face, bulkhead) {
        (Some(face), _) => PanelView::of_face(set.plan, face)?,
        (None, panel) => PanelView::of_bulkhead(set.plan, (*panel)?)?,
    };
    let stretch = stretch(set, FRAMING, number, *window);
    super::framing::framing(set, &of, &stretch, &planned.title)
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
