//! Which elevations the set has.

use super::panel_view::PanelView;
use crate::drawing::border::Frame;
use crate::drawing::page::plain;
use crate::drawing::set::{Drawn, Planned, Set};
use crate::parts::Assembly;
use crate::plan::{Panel, PanelOf, Plan};

/// A sheet for each face that somebody can stand in front of.
pub fn finished_planned(plan: &Plan, _assembly: &Assembly, _frame: &Frame) -> Vec<Planned> {
    let faces = plan.faces.iter().enumerate().filter(|(_, f)| !f.wall);
    faces
        .map(|(number, face)| Planned {
            stem: format!("elevation-{}-finished", file_part(&face.mark)),
            title: format!("{}: finished", capitalised(&plain(&face.name))),
            face: Some(number),
            figures: Vec::new(),
        })
        .collect()
}

/// Draws one of them.
pub fn finished(set: &Set, number: usize) -> Option<Drawn> {
    let planned = finished_planned(set.plan, set.assembly, set.frame);
    let planned = planned.get(number)?;
    super::finished::finished(
        set.plan,
        set.scene,
        set.frame,
        planned.face?,
        &planned.title,
    )
}

/// A sheet for the steel of each face, then one for each bulkhead.
pub fn framing_planned(plan: &Plan, _assembly: &Assembly, _frame: &Frame) -> Vec<Planned> {
    let faces = plan.faces.iter().enumerate().map(|(number, face)| Planned {
        stem: format!("elevation-{}-framing", file_part(&face.mark)),
        title: format!("{}: framing", capitalised(&plain(&face.name))),
        face: Some(number),
        figures: Vec::new(),
    });
    let bulkheads = bulkheads(plan).filter_map(|(_, panel, count)| {
        let run = plan.design.runs.get(panel.run)?;
        let name = capitalised(&plain(&run.name.value));
        Some(Planned {
            stem: format!(
                "elevation-{}-bulkhead-{count}-framing",
                file_part(&run.mark)
            ),
            title: format!("{name} run, bulkhead {count}: framing"),
            face: None,
            figures: Vec::new(),
        })
    });
    faces.chain(bulkheads).collect()
}

/// Draws one of them.
pub fn framing(set: &Set, number: usize) -> Option<Drawn> {
    let planned = framing_planned(set.plan, set.assembly, set.frame);
    let planned = planned.get(number)?;
    let of = match planned.face {
        Some(face) => PanelView::of_face(set.plan, face)?,
        None => {
            let later = number.checked_sub(set.plan.faces.len())?;
            let (panel, ..) = bulkheads(set.plan).nth(later)?;
            PanelView::of_bulkhead(set.plan, panel)?
        }
    };
    super::framing::framing(set.plan, set.scene, set.frame, &of, &planned.title)
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
